import type { Made } from "./entry.js";

/** Whatever a package was made with that is not the same now: "templates", "locales/es", "hearthsheet 0.1.0 (now 0.2.0)". */
export function changedSince(then: Made, now: Made): string[] {
  const names = (of: Record<string, string>, other: Record<string, string>) =>
    [...new Set([...Object.keys(of), ...Object.keys(other)])].sort();
  return [
    ...names(then.shipped, now.shipped).filter((name) => then.shipped[name] !== now.shipped[name]),
    ...names(then.versions, now.versions)
      .filter((name) => then.versions[name] !== now.versions[name])
      .map((name) => `${name} ${then.versions[name] ?? "-"} (${now.versions[name] ?? "-"})`),
  ];
}

import type { Sources } from "./read-plan.js";
import { textOf } from "./text-of.js";
import { readYaml } from "./yaml.js";

/**
 * The language the clinic's staff write in ("es"), as the profile says it, even where the rest of it cannot be read:
 * that is when it is needed, to tell them so. null where it is not said, or is no language tag.
 */
export function staffLanguage({ plan, clinic }: Sources): string | null {
  const profile = clinic ? dataOf(clinic) : inside(dataOf(plan), "clinic");
  const language = inside(profile, "language");
  try {
    return typeof language === "string" ? (Intl.getCanonicalLocales(language)[0] ?? null) : null;
  } catch {
    return null;
  }
}

function dataOf(source: Sources["plan"]): unknown {
  const text = textOf(source).value;
  return text === null ? undefined : readYaml(source.file, text).data;
}

const inside = (data: unknown, key: string): unknown =>
  typeof data === "object" && data !== null ? Object.entries(data).find(([name]) => name === key)?.[1] : undefined;

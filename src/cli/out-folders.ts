import { dirname, relative, resolve, sep } from "node:path";

/**
 * Where under --out the package of each plan goes: straight into it for one plan; for several into a folder named after
 * the plan's own place below the folder they all share ("rex/plan.yaml" -> "rex"), so that no two ever meet.
 */
export function outFolders(plans: readonly string[]): Map<string, string> {
  const [only] = plans;
  if (plans.length === 1 && only !== undefined) return new Map([[only, ""]]);
  const paths = plans.map((plan) => resolve(plan));
  const shared = paths.map(dirname).reduce(commonFolder);
  const whole = paths.map((path) => relative(shared, path));
  const short = whole.map((path) => path.replace(/\.(ya?ml|json)$/i, "").replace(/[\\/]plan$/, ""));
  const distinct = new Set(short.map((name) => name.toLowerCase())).size === plans.length;
  return new Map(plans.map((plan, i) => [plan, (distinct ? short[i] : whole[i]) ?? plan]));
}

function commonFolder(a: string, b: string): string {
  const [left, right] = [a.split(sep), b.split(sep)];
  const apart = left.findIndex((part, i) => part !== right[i]);
  return (apart < 0 ? left : left.slice(0, apart)).join(sep) || sep;
}

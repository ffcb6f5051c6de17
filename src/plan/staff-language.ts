import type { Sources } from "./read-clinic.js";
import { fieldOf, readText } from "./read-text.js";

/**
 * The language the clinic's staff write in ("es"), as the profile says it, even where the rest of it cannot be read:
 * that is when it is needed, to tell them so. null where it is not said, or is no language tag.
 */
export function staffLanguage({ plan, clinic }: Sources): string | null {
  const profile = clinic ? readText(clinic, "").data : fieldOf(readText(plan, "").data, "clinic");
  const language = fieldOf(profile, "language");
  try {
    return typeof language === "string" ? (Intl.getCanonicalLocales(language)[0] ?? null) : null;
  } catch {
    return null;
  }
}

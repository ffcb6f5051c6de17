import type { Locales } from "../locales.js";
import type { ClinicReview } from "./kinds.js";
import { statusesOf } from "./status.js";

/** Where a clinic keeps them, beside its profile. */
export const clinicReviewsFile = "language-reviews.json";

/** The reviews of a file; null where it is no such file. */
export function readClinicReviews(text: string): ClinicReview[] | null {
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) && value.every(isReview) ? value : null;
  } catch {
    return null;
  }
}

const isReview = (value: unknown): value is ClinicReview =>
  typeof value === "object" &&
  value !== null &&
  ["language", "by", "on"].every(
    (name) => typeof Object.entries(value).find(([key]) => key === name)?.[1] === "string",
  ) &&
  "sentences" in value &&
  typeof value.sentences === "object" &&
  value.sentences !== null;

/** The reviews with one more, of all that owners read in a language as it is now; it takes the place of the last of it. */
export function withClinicReview(
  locales: Locales,
  reviews: readonly ClinicReview[],
  { language, by, on }: Omit<ClinicReview, "sentences">,
): ClinicReview[] {
  const sentences = Object.fromEntries(
    statusesOf(locales, language).flatMap(({ name, words, forOwners }) => (forOwners && words ? [[name, words]] : [])),
  );
  return [...reviews.filter((review) => review.language !== language), { language, by, on, sentences }];
}

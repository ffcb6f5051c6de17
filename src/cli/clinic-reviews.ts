import { join } from "node:path";
import { type ClinicReview, clinicReviewsFile, type Outcome, readClinicReviews, type Source } from "#index.js";
import { readBeside } from "#io/read-beside.js";
import { problem } from "#problems/problem.js";

/** Reviews, and the file they stand in; null where there is none. */
export type Reviews = { reviews: ClinicReview[]; source: Source | null };

export const noReviews: Reviews = { reviews: [], source: null };

/** The reviews of languages that lie in a clinic's folder, if there are any. */
export async function clinicReviewsIn(folder: string): Promise<Outcome<Reviews>> {
  const { value: source, problems } = await readBeside(folder, clinicReviewsFile);
  if (problems.length > 0) return { value: null, problems };
  if (!source) return { value: noReviews, problems: [] };
  const reviews = readClinicReviews(new TextDecoder().decode(source.bytes));
  if (reviews) return { value: { reviews, source }, problems: [] };
  const at = { file: source.file, line: 1, column: 1, length: 1 };
  return { value: null, problems: [problem("reviews-unreadable", at, { path: join(folder, clinicReviewsFile) })] };
}

/** Who has read the words: nobody, somebody who speaks the language well, a qualified translator. */
export const reviewers = ["nobody", "fluent", "qualified"] as const;
export type Reviewer = (typeof reviewers)[number];

/** What locales/<tag>/status.json says of a sentence: hashes of the source it was made from and of its words then. */
export type Stamp = { from: string; words: string; by: Reviewer };

/** A clinic's own reading of a language: who, when ("2026-03-04"), and the hashes of the sentences as they were read. */
export type ClinicReview = { language: string; by: string; on: string; sentences: Record<string, string> };

/**
 * A sentence as it is now: hashes of its source and of its words (null where it has none), and what its stamp says. own: the
 * clinic has written it itself, and so it is no translation of ours.
 */
export type SentenceStatus = {
  name: string;
  forOwners: boolean;
  from: string;
  words: string | null;
  stale: boolean;
  by: Reviewer;
  own?: true;
};

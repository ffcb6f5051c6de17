import type { Tables } from "./tables.js";
import type { Topic } from "./topic.js";

/**
 * A kind of care as whoever fills in a plan must know it: what it asks for, its visits on published days (usualCourse), the
 * course it often has (oftenCourse, for a clinician to take or change), what its collar often waits for, and the animals it may
 * not suit (doubtful).
 */
export type TopicChoice = Pick<
  Topic,
  "id" | "species" | "sex" | "site" | "bandage" | "course" | "collar" | "doubtful"
> & {
  usualCourse: string[];
  oftenCourse: string[];
  oftenUntil: string | null;
};

/** What a plan may name. until: what a collar may wait for, and the kinds of visit after which that has happened. */
export type Choices = {
  topics: TopicChoice[];
  bandages: string[];
  collars: string[];
  until: { event: string; visits: string[]; tooEarlyBefore: boolean }[];
  visits: { id: string; words: string[] }[];
};

export const choicesOf = ({ care, visits }: Tables): Choices => ({
  topics: care.topics.map(({ id, species, sex, site, bandage, course, collar, doubtful, visits: kinds, ...often }) => ({
    ...{ id, species, sex, site, bandage, course, collar, doubtful },
    usualCourse: kinds.flatMap((id) => usualLine(id, visits)),
    oftenCourse: often.usualCourse,
    oftenUntil: often.usualUntil ?? null,
  })),
  bandages: care.bandages.map(({ id }) => id),
  collars: Object.keys(care.collars.kinds),
  until: care.collars.until.map(({ event, visits, tooEarlyBefore }) => ({ event, visits, tooEarlyBefore })),
  visits: visits.map(({ id, words }) => ({ id, words })),
});

/** "sutures out day 10-14": a visit whose usual days the table has from a source; nothing for one that the wound decides. */
function usualLine(id: string, visits: Tables["visits"]): string[] {
  const kind = visits.find((one) => one.id === id);
  const [word] = kind?.words ?? [];
  return kind?.usual && word ? [`${word} day ${kind.usual.from}-${kind.usual.to}`] : [];
}

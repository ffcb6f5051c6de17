import type { Answers } from "./answers.js";

/**
 * What was chosen in earlier plans, to offer it again: the care, never the case. It names no owner, no animal and no medicine.
 * topics: the latest last.
 */
export type Habits = {
  clinician: string | null;
  languages: string[];
  topics: Record<string, { bandage?: string; course?: string[]; items?: string[] }>;
};

export const noHabits: Habits = { clinician: null, languages: [], topics: {} };

const texts = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((one): one is string => typeof one === "string") : [];

/** Reads what an earlier run kept; whatever it cannot read is as if it had never been. */
export function readHabits(text: string): Habits {
  try {
    const { clinician, languages, topics } = JSON.parse(text);
    const rows = Object.entries(topics ?? {}).map(([id, row]) => {
      const { bandage, course, items } = (row ?? {}) as Record<string, unknown>;
      const kept = typeof bandage === "string" ? { bandage } : {};
      return [id, { ...kept, ...(course ? { course: texts(course) } : {}), ...(items ? { items: texts(items) } : {}) }];
    });
    return {
      clinician: typeof clinician === "string" ? clinician : null,
      languages: texts(languages),
      topics: Object.fromEntries(rows),
    };
  } catch {
    return noHabits;
  }
}

/** The habits with the choices of one more plan. A line with a day of its own is of that case alone. */
export function habitsWith(
  habits: Habits,
  { clinician, language, topic, bandage, course = [], items = [] }: Answers,
): Habits {
  if (topic === undefined) return habits;
  const { [topic]: _, ...others } = habits.topics;
  const lasting = course.filter((line) => !/\d{4}-\d{2}-\d{2}/.test(line));
  const row = { ...(bandage ? { bandage } : {}), course: lasting, items };
  return {
    clinician: clinician ?? habits.clinician,
    languages: [...new Set([...(language ? [language] : []), ...habits.languages])],
    topics: { ...others, [topic]: row },
  };
}

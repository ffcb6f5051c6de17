import type { Edit, Plan, VisitEntry } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, problem } from "#problems/problem.js";
import type { Topic } from "#tables/topic.js";
import { bandageOff } from "../bandage-off.js";
import type { Care, Facts } from "../facts.js";
import type { Line } from "../visits/language/line.js";
import { closedCare, onceClosed } from "./closed-care.js";
import { isDue, restOf, type Turn } from "./course-lines.js";

/** The course of each line of care from a visit on. missed: what should have taken place by now, and did not. */
export type CareRest = { courses: string[][]; missed: string[]; edits: Edit[] };

/**
 * What a visit leaves of the care: its courses go on, a wound that was closed is cared for as one, and a bandage that came off
 * for good is gone. Problems: "revise-which-closed", "revise-closed-no-visit".
 */
export function careEdits(
  plan: Plan,
  { care }: Facts,
  entry: VisitEntry,
  turn: Turn,
  lines: readonly Line[],
  topics: readonly Topic[],
): Outcome<CareRest> {
  const closes = entry.decided === "close";
  const closed = closes ? closedCare(plan, care, lines, topics, (line) => isDue(line, turn)) : none;
  const wound = closed.value;
  if (!wound) return { value: null, problems: closed.problems };
  // Another wound is not closed with this one.
  const isOther = (index: number) => wound.length > 0 && !wound.includes(index);
  const rests = plan.care.map((_, index) =>
    restOf(
      lines.filter((line) => line.care === index),
      isOther(index) ? { ...turn, decided: "continue" } : turn,
      lines.filter((line) => line.care !== index),
    ),
  );
  const [inQuestion = 0] = wound;
  const courses = rests.map(({ course }, index) => (index === inQuestion && entry.course ? entry.course : course));
  // A closed wound has something in it that comes out, and somebody is to come for that.
  const noVisit =
    wound.length > 0 && entry.booked.length === 0 && wound.every((index) => courses[index]?.length === 0)
      ? [problem("revise-closed-no-visit", placeOf(plan.places, "care", inQuestion), {})]
      : [];
  const edits = [
    ...wound.flatMap((index) => closedEdits(index, onceClosed(topics, care[index]))),
    ...bandageEdits(plan, care, turn.was, topics),
    ...courses.map((course, index): Edit => ({ path: ["care", index, "course"], value: course })),
  ];
  return { value: { courses, missed: rests.flatMap(({ missed }) => missed), edits }, problems: noVisit };
}

const none: Outcome<number[]> = { value: [], problems: [] };

/** A closed wound is cared for otherwise, and the bandage that held its packing is gone. */
const closedEdits = (index: number, topic: string | null): Edit[] =>
  topic === null ? [] : [{ path: ["care", index, "topic"], value: topic }, { path: ["care", index, "bandage"] }];

/** A bandage that came off is told of no more, but where the care is none without it: there somebody has to choose another. */
function bandageEdits(plan: Plan, care: readonly Care[], was: readonly string[], topics: readonly Topic[]): Edit[] {
  const off = bandageOff(plan.care, was);
  const topic = off === null ? undefined : topics.find(({ id }) => id === care[off]?.topic);
  return off === null || topic?.bandage === "needed" ? [] : [{ path: ["care", off, "bandage"] }];
}

import { expect, it } from "vitest";
import type { Answers } from "../../src/cli/entry/answers.js";
import { planDraft } from "../../src/cli/entry/plan-draft.js";
import { type Known, planQuestions } from "../../src/cli/entry/plan-questions.js";
import { openPlanRoom } from "../../src/cli/entry/plan-room.js";
import { collarWanted } from "../../src/cli/entry/shown.js";
import { tryPlan } from "../../src/cli/entry/trial.js";
import { choices, openHouse } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";

const { value: house } = openHouse(await shippedFiles());
if (!house) throw new Error("the house is broken");
const { room } = await openPlanRoom({ house } as never, "examples", {
  clinic: "examples/clinic.yaml",
  today: "2026-03-02",
});
if (!room) throw new Error("the clinic of the examples is broken");
const { topics } = choices(house);

const course = (known: Known) => planQuestions(known).find(({ context }) => context === "course");
const answersFor = (topic: (typeof topics)[number]): Answers => ({
  name: "Rex",
  discharged: "2026-03-02 16:30",
  species: topic.species[0] ?? "dog",
  sex: topic.sex[0] ?? "female",
  weight: "6 kg",
  owner: "Ama Okafor",
  language: "en",
  topic: topic.id,
  reason: "A reason.",
  ...(topic.site === "needed" ? { site: topic.id.startsWith("eye") ? "left eye" : "left thigh" } : {}),
  ...(topic.bandage === "needed" ? { bandage: "body-wrap" } : {}),
});

it.each(topics.map((topic) => [topic.id, topic] as const))(
  "%s: its usual course is offered to whoever is asked, as words a plan understands",
  (_, topic) => {
    const answers = answersFor(topic);
    const moment = { answers, facts: null };
    const question = course({ ...room.known, habits: { topics: {}, languages: [] } as never });
    const offered = question?.offered?.(moment) ?? [];
    expect(offered).toEqual(topic.oftenCourse.length > 0 ? [topic.oftenCourse.join("; ")] : []);

    const read = offered.length > 0 ? question?.read(offered, moment) : {};
    const draft = { clinic: "clinic.yaml", schema: "plan.schema.json", collars: room.collars, asks: [] };
    const { value, problems } = tryPlan(
      planDraft({ ...answers, ...read }, draft, () => ""),
      "plan.yaml",
      room.ground,
    );
    expect(problems.filter(({ severity }) => severity === "stop").map(({ code }) => code)).toEqual([]);
    expect(value?.facts?.course.visits.length ?? 0).toBeGreaterThanOrEqual(topic.oftenCourse.length);
  },
);

it("a clinician's own course of last time comes before the topic's", () => {
  const habits = { topics: { seizure: { course: ["recheck day 30"], items: [] } }, languages: [] };
  const question = course({ ...room.known, habits: habits as never });
  expect(question?.offered?.({ answers: { topic: "seizure" }, facts: null })).toEqual(["recheck day 30"]);
  // Where nobody is there to see it, a day that no source gives is not put in.
  const bare = course({ ...room.known, habits: { topics: {}, languages: [] } as never });
  expect(bare?.initial?.({ answers: { topic: "seizure" }, facts: null })).toEqual([]);
  expect(bare?.offered?.({ answers: { topic: "seizure" }, facts: null })).toEqual(["recheck day 14"]);
});

it("says that a collar is wanted, and until when, only where the topic wants one", () => {
  const said = (id: string) => collarWanted(topics.find((topic) => topic.id === id)).map(({ values }) => values);
  expect(said("sutured-wound")).toEqual([{ until: "sutures out", context: "until" }]);
  expect(said("hot-spot")).toEqual([{ until: "", context: "" }]);
  expect(said("seizure")).toEqual([]);
});

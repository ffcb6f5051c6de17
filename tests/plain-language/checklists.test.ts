import { describe, expect, it } from "vitest";
import type { Handout, Section } from "#handout/handout.js";
import { actionability, type Item, index, understandability, type Verdict } from "./items.js";
import { type Material, materials } from "./material.js";

const verdict = (item: Item, material: Material): Verdict =>
  "computed" in item ? item.computed(material) : !item.why.startsWith("no");
/** Percent of the items that apply. */
function score(items: readonly Item[], material: Material): number {
  const verdicts = items.map((item) => verdict(item, material)).filter((one) => one !== null);
  return (100 * verdicts.filter((one) => one).length) / verdicts.length;
}
const failed = (items: readonly Item[], material: Material) =>
  items.filter((item) => verdict(item, material) === false).map(({ item, asks }) => `${item} ${asks}`);
const sign = (one: Verdict) => (one === null ? "–" : one ? "yes" : "no");

/** The scoring, item by item: a table of each checklist, a column a handout. */
const recorded = (title: string, items: readonly Item[]) =>
  [
    `## ${title}`,
    "",
    `| item | | ${materials.map(({ name }) => name).join(" | ")} |`,
    `| --- | --- | ${materials.map(() => "---").join(" | ")} |`,
    ...items.map((item) => {
      const how = "computed" in item ? "" : " (judged)";
      return `| ${item.item} | ${item.asks}${how} | ${materials.map((one) => sign(verdict(item, one))).join(" | ")} |`;
    }),
    `| | score | ${materials.map((one) => score(items, one).toFixed(0)).join(" | ")} |`,
    "",
    ...items.flatMap((item) =>
      "computed" in item ? [] : [`- ${item.item}, judged: ${item.why} Look at: ${item.where}.`],
    ),
    "",
  ].join("\n");

it("has the 17 and 7 items of PEMAT for print, and the 20 of the CDC index", () =>
  expect([understandability.length, actionability.length, index.length]).toEqual([17, 7, 20]));

describe.each(materials.map((material) => [material.name, material] as const))("%s", (_, material) => {
  it("is understood: PEMAT 100 of 100", () => expect(failed(understandability, material)).toEqual([]));
  it("can be acted on: PEMAT 100 of 100", () => expect(failed(actionability, material)).toEqual([]));
  it("is clear: CDC index 90 of 100 or more", () => {
    expect([failed(index, material), score(index, material) >= 90]).toEqual([["4 A picture carries it"], true]);
  });
});

it("is recorded item by item", async () => {
  const text = [
    "# Plain language, item by item",
    "",
    "AHRQ PEMAT for print (17 + 7 items) and the CDC Clear Communication Index (20), scored over these handouts in English.",
    "",
    recorded("PEMAT: understandability", understandability),
    recorded("PEMAT: actionability", actionability),
    recorded("CDC Clear Communication Index", index),
  ].join("\n");
  await expect(text).toMatchFileSnapshot("scores.snapshot.md");
});

describe("a handout that is worse fails", () => {
  const [good] = materials;
  if (!good) throw new Error("no material");
  const changed = (sections: Section[]): Material => ({ ...good, handout: { ...good.handout, sections } as Handout });
  const { sections } = good.handout;
  const paragraph = (text: string): Section["blocks"][number] => ({
    kind: "paragraph",
    role: "body",
    inlines: [{ kind: "text", text }],
  });
  const first = sections[0];
  if (!first) throw new Error("no sections");
  const withBlock = (block: Section["blocks"][number]) =>
    changed([{ ...first, blocks: [block, ...first.blocks] }, ...sections.slice(1)]);
  const long: Section["blocks"][number] = {
    kind: "list",
    mark: "bullet",
    items: Array.from({ length: 8 }, () => ({ inlines: [{ kind: "text", text: "One." }] })),
  };
  const withoutTicks = sections.filter(({ id }) => !["log", "medicines"].includes(id));
  const all = [...understandability, ...actionability, ...index];

  it.each<[string, Material, string[]]>([
    [
      "sums",
      withBlock(paragraph("Give 5 mg/kg.")),
      ["No sums are left to the reader", "Sums to do (the good answer is no)"],
    ],
    [
      "a share",
      withBlock(paragraph("About 20 % get worse.")),
      ["Numbers are clear: whole ones, no percentages", "Numbers the reader uses", "A chance is told in words too"],
    ],
    ["a wall of words", withBlock(paragraph(Array.from({ length: 80 }, () => "word").join(" "))), ["Short sections"]],
    ["a long list", withBlock(long), ["Lists, none of more than 7 without parts"]],
    ["no main message", withBlock(paragraph("Welcome.")), ["One main message", "It is marked"]],
    ["what is urgent last", changed([...sections].reverse()), ["The order is sensible: what is urgent first"]],
    ["nothing to tick", changed(withoutTicks), ["A thing to use: a list to tick, a chart, a calendar"]],
    [
      "no signs",
      changed(sections.filter(({ id }) => id !== "go-now")),
      ["A summary", "A call to action", "What the risk is"],
    ],
    [
      "no steps",
      changed(sections.filter(({ id }) => id !== "home")),
      ["Steps that can be managed one by one", "Drawings wherever they help to do it"],
    ],
    [
      "nothing of what is not known",
      changed(sections.filter(({ id }) => id !== "about")),
      ["What is known and what is not", "Good and bad of what is asked"],
    ],
    ["no title", { ...good, handout: { ...good.handout, title: "Discharge sheet" } }, ["The purpose is plain"]],
    [
      "hard words",
      {
        ...good,
        reading: { ...good.reading, problems: [{ code: "word-hard", values: { given: "Bramble" } } as never] },
      },
      ["Everyday words", "A term of medicine is explained", "The words of the reader"],
    ],
    [
      "passive",
      { ...good, reading: { ...good.reading, sentences: 4, problems: [{ code: "sentence-passive" } as never] } },
      ["Active voice (in 80 of 100 sentences)", "Message and call are active"],
    ],
  ])("%s", (_, worse, items) => {
    const wrong = all.filter((item) => verdict(item, worse) === false).map(({ asks }) => asks);
    expect(wrong).toEqual(expect.arrayContaining(items));
  });
});

import { expect, test } from "vitest";
import type { Handout } from "#handout/handout.js";
import { renderPdf } from "#render/pdf/pdf.js";
import { paperDog } from "../handouts/paper-dog.js";
import { fonts, pdfOf } from "./help.js";

const problemsOf = (handout: Handout) => {
  const { value, problems } = renderPdf(handout, { paper: "letter", large: false, fonts });
  return { made: value !== null, problems };
};

test("a character no font has is a problem at the place of its words, never a blank", () => {
  const from = "plans/rex.yaml:7:3";
  const sign = { kind: "statement" as const, id: "x", from, inlines: [{ kind: "text" as const, text: "Ngứa 犬" }] };
  const [first, ...rest] = paperDog.sections;
  if (!first) throw new Error("no section");
  const { made, problems } = problemsOf({
    ...paperDog,
    sections: [{ ...first, blocks: [{ kind: "paragraph", role: "body", inlines: [sign] }] }, ...rest],
  });
  expect(made).toBe(false);
  expect(problems).toContainEqual({
    code: "glyph-missing",
    severity: "stop",
    at: { file: "plans/rex.yaml", line: 7, column: 3, length: 1 },
    values: { character: "犬", codepoint: "U+72AC" },
  });
});

test("words without a place are looked at too: title, running lines, a day's number, a label of a drawing", () => {
  const hostile = structuredClone(paperDog);
  hostile.title = "犬 goes home";
  hostile.running.patient = "猫";
  for (const { blocks } of hostile.sections)
    for (const block of blocks) {
      if (block.kind === "month" && block.weeks[0]?.[0]) block.weeks[0][0].text = "一";
      if (block.kind === "figure" && block.labels[0]) block.labels[0].text = "首";
    }
  const { problems } = problemsOf(hostile);
  expect(problems.map(({ values }) => ("character" in values ? values.character : null)).sort()).toEqual(
    ["一", "犬", "猫", "首"].sort(),
  );
});

test("what looks the same is drawn: a narrow no-break space, a no-break hyphen, letters written as two; invisible marks are not missed", () => {
  const title = "N\u0303andu\u0301 8:00\u202fAM, non\u2011stop, soft\u00adhyphen, \u2066isolated\u2069";
  expect(() => pdfOf({ ...paperDog, title })).not.toThrow();
});

test("a node nobody can draw is a problem", () => {
  const odd = structuredClone(paperDog);
  for (const { blocks } of odd.sections.slice(0, 1)) (blocks as unknown[]).push({ kind: "hologram" });
  expect(problemsOf(odd)).toMatchObject({
    made: false,
    problems: [{ code: "node-undrawable", values: { node: "hologram" } }],
  });
});

test("a drawing whose path is not path data is a problem", () => {
  const odd = structuredClone(paperDog);
  for (const { blocks } of odd.sections)
    for (const block of blocks) if (block.kind === "figure") block.shapes.push({ path: "M0 0 W 5", fill: "ink" });
  expect(problemsOf(odd)).toMatchObject({ made: false, problems: [{ code: "figure-unreadable" }] });
});

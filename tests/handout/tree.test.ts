import { expect, it } from "vitest";
import { faultsOf } from "#handout/check.js";
import type { Handout } from "#handout/handout.js";
import { printTree } from "#handout/print-tree.js";
import { blocksIn, inlinesIn, linesOf } from "#handout/walk.js";
import { everyNode } from "../handouts/every-node.js";

it("walking meets every kind of node of the fixture that has them all", () => {
  const kinds = new Set([...inlinesIn(everyNode)].map(({ kind }) => kind));
  expect([...kinds].sort()).toEqual([
    "dose",
    "email",
    "money",
    "passage",
    "phone",
    "statement",
    "text",
    "tick",
    "when",
  ]);
  const blocks = new Set([...blocksIn(everyNode)].map(({ kind }) => kind));
  expect([...blocks].sort()).toEqual(["figure", "list", "month", "paragraph", "signature", "table"]);
});

it("printing shows the words of every line", () => {
  // A line break inside a value is shown, and does not break the line.
  const printed = printTree(everyNode).replaceAll("\\r", "\r").replaceAll("\\n", "\n");
  for (const inline of inlinesIn(everyNode)) if ("text" in inline) expect(printed).toContain(inline.text);
  for (const block of blocksIn(everyNode)) if (block.kind === "figure") expect(printed).toContain(block.alt);
  expect(linesOf({ kind: "paragraph", role: "body", inlines: [] })).toEqual([[]]);
});

it("faults are found", () => {
  const text = (words: string) => [{ kind: "text" as const, text: words }];
  const broken: Handout = {
    ...everyNode,
    events: everyNode.events.flatMap((event) => [event, event]).slice(0, 2),
    sections: [
      { kind: "section", id: "a", level: 2, weight: "plain", title: [], blocks: [] },
      {
        kind: "section",
        id: "a",
        level: 2,
        weight: "plain",
        title: text("A"),
        blocks: [
          { kind: "paragraph", role: "body", inlines: [] },
          { kind: "table", caption: [], head: [{ inlines: text("x"), align: "start" }], rows: [[]], foot: [] },
          { kind: "figure", id: "f", width: 1, height: 1, shapes: [], labels: [], alt: "", caption: text("c") },
        ],
      },
    ],
  };
  expect(faultsOf(broken)).toEqual([
    "two sections are called a",
    `two events are called ${everyNode.events[0]?.uid}`,
    "section a has no title",
    "section a is empty",
    "a line of a paragraph is empty",
    "a table has no caption",
    "rows of another length than the head: 1",
    "figure f is not told in words",
  ]);
});

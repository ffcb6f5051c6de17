import { expect, it } from "vitest";
import type { Block, Section } from "#handout/handout.js";
import { leadsOn } from "#render/pdf/leads-on.js";
import type { Piece } from "#render/pdf/piece.js";

const paragraph: Block = { kind: "paragraph", role: "body", inlines: [{ kind: "text", text: "Follow the label." }] };
const part: Section = { kind: "section", id: "part", level: 2, weight: "plain", title: [], blocks: [paragraph] };
const lines = (count: number) => Array<Piece>(count);

it.each([
  ["the few lines that open a section stay with its first part", [paragraph, part], 0, 3, true],
  ["a long opening is something to read by itself", [paragraph, part], 0, 6, false],
  ["words further down do not, unless they announce something", [paragraph, paragraph, part], 1, 2, false],
  ["nothing follows the last words", [paragraph], 0, 1, false],
] as const)("%s", (_, blocks, index, count, stays) => expect(leadsOn(blocks, index, lines(count))).toBe(stays));

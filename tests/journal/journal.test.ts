import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changedSince } from "#journal/changed.js";
import type { Built, Entry } from "#journal/entry.js";
import { inForce } from "#journal/in-force.js";
import { readJournal, withEntry } from "#journal/journal.js";

const hash = (digit: number) => String(digit % 10).repeat(64);
const built = (revision: number, on: string, mark = 0): Built => ({
  what: "built",
  at: `${on}T15:00:00.000Z`,
  on,
  case: "c1",
  revision,
  paper: `${on}T09:30`,
  sources: { plan: { file: "plan.yaml", from: "../plan.yaml", sha256: hash(mark) }, clinic: null, prices: null },
  earlier: [],
  reviews: null,
  asked: {
    languages: [],
    formats: ["pdf"],
    paper: null,
    only: null,
    large: false,
    staffToo: false,
    proof: false,
    allow: [],
  },
  made: { versions: {}, shipped: {} },
  facts: hash(mark),
  languages: [{ language: "es", review: "not reviewed" }],
  files: [{ name: "handout.pdf", sha256: hash(mark) }],
});
const sent = (revision: number, on: string): Entry => ({
  ...{ what: "sent", at: `${on}T16:00:00.000Z`, on, case: "c1", revision },
  ...{ to: "lucia@example.org", language: "es", letter: hash(3) },
});

const story: Entry[] = [
  built(0, "2026-03-02", 1),
  sent(0, "2026-03-02"),
  { what: "visited", at: "2026-03-03T15:30:00.000Z", on: "2026-03-03", case: "c1", revision: 1, plan: hash(2) },
  built(1, "2026-03-03", 2),
  built(0, "2026-03-06", 4),
];
const text = story.reduce(withEntry, "");

describe("a journal", () => {
  it("is read as it was written, and what was written is never written anew", () => {
    expect(readJournal("journal.jsonl", text)).toEqual({ value: story, problems: [] });
    const more = withEntry(text, sent(1, "2026-03-07"));
    expect(more.startsWith(text)).toBe(true);
    expect(readJournal("journal.jsonl", more).value?.length).toBe(6);
  });

  it("that is edited, cut, doubled or shuffled by hand is told at the first line that is not as it was", () => {
    const lines = text.trimEnd().split("\n");
    const line = (changed: string[]) => readJournal("j", `${changed.join("\n")}\n`).problems[0]?.at.line;
    for (const i of lines.keys()) {
      expect(line(lines.with(i, (lines[i] ?? "").replace("2026-03-0", "2026-04-0")))).toBe(i + 1);
      if (i < lines.length - 1) expect(line(lines.toSpliced(i, 1))).toBe(i + 1);
      expect(line(lines.toSpliced(i, 0, lines[i] ?? ""))).toBe(i + 2);
      expect(line(lines.toSpliced(i, 0, ""))).toBe(i + 1);
    }
    expect(readJournal("j", text.slice(0, -20)).problems[0]?.at.line).toBe(lines.length);
  });

  it("with any byte changed is never taken for whole", () => {
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.string({ minLength: 1, maxLength: 1 }), (at, letter) => {
        if (text[at] === letter) return;
        expect(readJournal("j", text.slice(0, at) + letter + text.slice(at + 1)).value).toBeNull();
      }),
    );
  });
});

describe("what the owner had on a day", () => {
  it.each([
    ["2026-03-01", null],
    ["2026-03-02", 0],
    ["2026-03-03", 1],
    // An old paper that is printed again takes no new one's place.
    ["2026-03-07", 1],
  ])("%s: revision %s", (day, revision) => {
    expect(inForce(story, day)?.paper.revision ?? null).toBe(revision);
  });

  it("with the letters it was sent by", () => {
    expect(inForce(story, "2026-03-02")?.sent).toEqual([story[1]]);
    expect(inForce(story, "2026-03-05")?.sent).toEqual([]);
  });
});

it("names all that a paper was made with and that is not the same now", () => {
  const then = {
    versions: { node: "20.1.0", pdfkit: "0.20.2" },
    shipped: { templates: hash(1), "locales/es": hash(2) },
  };
  const now = {
    versions: { node: "20.1.0", pdfkit: "0.21.0" },
    shipped: { templates: hash(1), "locales/es": hash(3) },
  };
  expect(changedSince(then, now)).toEqual(["locales/es", "pdfkit 0.20.2 (0.21.0)"]);
  expect(changedSince(then, then)).toEqual([]);
});

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { problem } from "#problems/problem.js";
import { type RecordInput, renderRecord } from "#render/record/record.js";

const bytes = (text: string) => new TextEncoder().encode(text);
const at = (file: string) => ({ file, line: 4, column: 13, length: 16 });

const input: RecordInput = {
  version: "0.1.0",
  caseId: "9f86d081884c7d65",
  revision: 2,
  plan: { file: "cases/Lucia Ferrer/plan.yaml", bytes: bytes("abc") },
  clinic: { file: "cases/clinic.yaml", bytes: bytes("") },
  prices: { file: "cases/prices.yaml", bytes: bytes("abc") },
  languages: [
    { language: "es", review: "not reviewed" },
    { language: "en", review: "not reviewed" },
  ],
  settled: {
    allowed: [
      {
        problem: problem("paid-over-estimate", at("cases/Lucia Ferrer/plan.yaml"), {
          paid: { minor: 200, currency: "USD" },
          high: { minor: 100, currency: "USD" },
        }),
        reason: 'Paid ahead, "for next time"',
      },
    ],
    notes: [problem("reason-not-translated", at("cases/clinic.yaml"), { language: "es", text: "In general terms" })],
  },
  files: [
    { name: "rechecks.ics", bytes: bytes("abc") },
    { name: "handout.pdf", bytes: bytes("") },
  ],
};

/** FIPS 180-4's examples, as NIST publishes them: the digests of "abc" and of nothing. */
const ofAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
const ofNothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

const record = `{
  "format": "hearthsheet-record/1",
  "tool": {
    "name": "hearthsheet",
    "version": "0.1.0"
  },
  "caseId": "9f86d081884c7d65",
  "revision": 2,
  "plan": {
    "sha256": "${ofAbc}"
  },
  "clinic": {
    "sha256": "${ofNothing}"
  },
  "prices": {
    "sha256": "${ofAbc}"
  },
  "languages": [
    {
      "language": "en",
      "review": "not reviewed"
    },
    {
      "language": "es",
      "review": "not reviewed"
    }
  ],
  "problems": [
    {
      "code": "paid-over-estimate",
      "severity": "ask",
      "at": {
        "in": "plan",
        "line": 4,
        "column": 13,
        "length": 16
      },
      "values": {
        "high": {
          "minor": 100,
          "currency": "USD"
        },
        "paid": {
          "minor": 200,
          "currency": "USD"
        }
      },
      "reason": "Paid ahead, \\"for next time\\""
    },
    {
      "code": "reason-not-translated",
      "severity": "note",
      "at": {
        "in": "clinic",
        "line": 4,
        "column": 13,
        "length": 16
      },
      "values": {
        "language": "es",
        "text": "In general terms"
      },
      "reason": null
    }
  ],
  "files": [
    {
      "name": "handout.pdf",
      "size": 0,
      "sha256": "${ofNothing}"
    },
    {
      "name": "rechecks.ics",
      "size": 3,
      "sha256": "${ofAbc}"
    }
  ]
}
`;

describe("record.json", () => {
  test("holds what was made from what, and what was gone past and why", () => {
    expect(renderRecord(input)).toBe(record);
  });

  test("is the same whatever order languages and files come in", () => {
    const turned = { ...input, languages: input.languages.toReversed(), files: input.files.toReversed() };
    expect(renderRecord(turned)).toBe(record);
  });

  test("a clinic profile in the plan has no hash of its own", () => {
    expect(JSON.parse(renderRecord({ ...input, clinic: null })).clinic).toBeNull();
  });

  test("no path of the plan, which may name the owner", () => {
    expect(renderRecord(input)).not.toMatch(/Lucia|cases|yaml/);
  });

  test("hashes are those of sha256sum", () => {
    const folder = mkdtempSync(join(tmpdir(), "record-"));
    try {
      fc.assert(
        fc.property(fc.uint8Array({ maxLength: 5000 }), (content) => {
          const path = join(folder, "content");
          writeFileSync(path, content);
          const [sum] = execFileSync("sha256sum", [path], { encoding: "utf8" }).split(" ");
          const { files } = JSON.parse(renderRecord({ ...input, files: [{ name: "a", bytes: content }] }));
          expect(files).toEqual([{ name: "a", size: content.length, sha256: sum }]);
        }),
        { numRuns: 20 },
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test("whatever the reason says, it is read back as it was", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (reason) => {
        const allowed = input.settled.allowed.map((one) => ({ ...one, reason }));
        const read = JSON.parse(renderRecord({ ...input, settled: { allowed, notes: [] } }));
        expect(read.problems[0].reason).toBe(reason);
      }),
    );
  });
});

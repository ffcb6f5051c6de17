import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { compose, compute, type House, openHouse, type Problem, readPlan, render, settle } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";

const home = fileURLToPath(new URL("../../examples/", import.meta.url));
const bytesOf = (file: string) => new Uint8Array(readFileSync(home + file));
const plans = ["dog-cheek-abscess/plan.yaml", "cat-abscess-at-home/plan.yaml"].map(bytesOf);
const clinic = bytesOf("clinic.yaml");
const prices = bytesOf("prices.yaml");
const runs = Number(process.env["HEARTHSHEET_FUZZ"] ?? 40);

let house: House;
beforeAll(async () => {
  const opened = openHouse(await shippedFiles()).value;
  if (!opened) throw new Error("what ships is broken");
  house = opened;
});

type Door = { plan?: Uint8Array; clinic?: Uint8Array; prices?: Uint8Array };

/** Any bytes in: a package out, or problems that each stand at a place of a file that was given. */
async function open(given: Door): Promise<"package" | "problems"> {
  const files = { plan: plans[0] ?? clinic, clinic, prices, ...given };
  const source = (file: string, bytes: Uint8Array) => ({ file, bytes });
  const read = readPlan(
    {
      plan: source("plan.yaml", files.plan),
      clinic: source("clinic.yaml", files.clinic),
      prices: source("prices.yaml", files.prices),
    },
    { today: "2026-03-02" },
  );
  const problems: Problem[] = [...read.problems];
  const facts = read.value && compute(read.value, house);
  problems.push(...(facts?.problems ?? []));
  const handout = facts?.value && compose(facts.value, house, { language: facts.value.owner.languages });
  problems.push(...(handout?.problems ?? []));
  const formats = ["text", "ics", "html"] as const;
  const made = handout?.value && (await render(handout.value, house, { paper: "letter", large: false, formats }));
  problems.push(...(made?.problems ?? []));
  const stops = problems.filter(({ severity }) => severity === "stop");
  for (const { code, at } of problems) {
    expect([code, typeof at.file, at.line >= 1, at.column >= 1]).toEqual([code, "string", true, true]);
  }
  if (!made?.value) {
    expect(stops.length, "nothing was made, and nothing says why").toBeGreaterThan(0);
    return "problems";
  }
  settle(problems, []);
  return "package";
}

const which = fc.constantFrom<keyof Door>("plan", "clinic", "prices");
const whole = { plan: plans, clinic: [clinic], prices: [prices] };
const one = which.chain((door) => fc.constantFrom(...whole[door]).map((bytes) => ({ door, bytes })));

/** One place of a file written over, taken out, or said twice. */
const byteMutation = fc.tuple(
  one,
  fc.array(
    fc.record({
      how: fc.constantFrom("over", "out", "twice"),
      at: fc.nat(4000),
      length: fc.integer({ min: 1, max: 40 }),
      put: fc.uint8Array({ maxLength: 8 }),
    }),
    { minLength: 1, maxLength: 6 },
  ),
);

describe("the front door", () => {
  it("bytes that were changed anywhere", async () => {
    // The door is not simply shut: what nobody changed is built.
    expect(await open({})).toBe("package");
    await fc.assert(
      fc.asyncProperty(byteMutation, async ([{ door, bytes }, changes]) => {
        let now = Buffer.from(bytes);
        for (const { how, at, length, put } of changes) {
          const start = at % now.length;
          const middle = { over: put, out: new Uint8Array(), twice: now.subarray(start, start + length) }[how] ?? put;
          const rest = how === "twice" ? start : start + length;
          now = Buffer.concat([now.subarray(0, start), middle, now.subarray(rest)]);
        }
        await open({ [door]: now });
      }),
      { numRuns: runs },
    );
  });

  it("any bytes at all", async () => {
    await fc.assert(
      fc.asyncProperty(which, fc.uint8Array({ maxLength: 2000 }), async (door, bytes) => {
        expect(await open({ [door]: bytes })).toBe("problems");
      }),
      { numRuns: runs },
    );
  });

  /** What people and programs have put into fields that something later trips over. */
  const hostile = fc.oneof(
    fc.string({ unit: "binary", maxLength: 60 }),
    fc.constantFrom(
      "\ud800",
      "a\udfffb",
      "\u202egnp.exe",
      "\u2066\u2067x",
      "\0",
      "\ufeff",
      "__proto__",
      "constructor",
      "toString",
      "{{x}}",
      "{{{constructor}}}",
      "[[1]]",
      "=1+1",
      "../../etc/passwd",
      "NaN",
      "Infinity",
      "-0",
      "1e999",
      "0x10",
      "1_000",
      "9".repeat(400),
      `1.${"0".repeat(400)}1 mg/kg`,
      "99999999999999999999 kg",
      "0 kg",
      "-5 kg",
      "24.6 kg kg",
      "9999-12-31 23:59",
      "0001-01-01 00:00",
      "2026-02-30 10:00",
      "2026-03-08 02:30",
      "275760-09-13",
      "every 0 days",
      "change every 0 days",
      "change every 1000000 days for 1000000 days",
      "change every day 1000000 times",
      "change every day for 1-99999999 days",
      "maybe ".repeat(200),
      `${"a ".repeat(2000)}!`,
      `${"0".repeat(5000)} days`,
      `${"(".repeat(3000)}`,
      `${"1-".repeat(2000)}`,
      `${" ".repeat(5000)}x`,
      `a@${"a.".repeat(2000)}`,
      "=?UTF-8?Q?=0A?=",
    ),
  );
  /** Every scalar of a file, by its path. */
  const leaves = (value: unknown, path: (string | number)[] = []): (string | number)[][] =>
    value !== null && typeof value === "object"
      ? Object.entries(value).flatMap(([key, inner]) =>
          leaves(inner, [...path, Array.isArray(value) ? Number(key) : key]),
        )
      : [path];
  const put = (value: unknown, [key, ...rest]: readonly (string | number)[], what: unknown): unknown => {
    if (key === undefined) return what;
    if (Array.isArray(value)) return value.map((inner, i) => (i === key ? put(inner, rest, what) : inner));
    return { ...(value as object), [key]: put((value as Record<string, unknown>)[key], rest, what) };
  };

  it("hostile words in any field", async () => {
    const field = one.chain(({ door, bytes }) => {
      const data: unknown = parse(new TextDecoder().decode(bytes), { schema: "failsafe" });
      return fc.constantFrom(...leaves(data)).map((path) => ({ door, data, path }));
    });
    await fc.assert(
      fc.asyncProperty(field, hostile, async ({ door, data, path }, words) => {
        await open({ [door]: new TextEncoder().encode(stringify(put(data, path, words), { lineWidth: 0 })) });
      }),
      { numRuns: runs },
    );
  });

  it("a value of another shape in any field", async () => {
    const field = one.chain(({ door, bytes }) => {
      const data: unknown = parse(new TextDecoder().decode(bytes), { schema: "failsafe" });
      return fc.constantFrom(...leaves(data)).map((path) => ({ door, data, path }));
    });
    await fc.assert(
      fc.asyncProperty(field, fc.jsonValue({ maxDepth: 3 }), async ({ door, data, path }, value) => {
        await open({ [door]: new TextEncoder().encode(JSON.stringify(put(data, path, value))) });
      }),
      { numRuns: runs },
    );
  });
});

describe("is shut, in good time and in words, to", () => {
  const text = new TextDecoder().decode(plans[1]);
  const bomb = ["a: &a [x, x, x, x, x, x, x, x, x]"];
  for (const [one, other] of ["ab", "bc", "cd", "de", "ef", "fg", "gh", "hi", "ij"])
    bomb.push(`${other}: &${other} [${Array(9).fill(`*${one}`).join(", ")}]`);
  const name = (value: string) => text.replace(/name: Clementine/, `name: ${value}`);

  it.each<[string, string]>([
    ["a bomb of aliases", bomb.join("\n")],
    ["an alias of itself", "a: &a [*a]\n"],
    ["lists in lists", `care: ${"[".repeat(50_000)}`],
    ["maps in maps", `${Array.from({ length: 3000 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")}\n`],
    [
      "a merge of the prototype",
      `${text}\n__proto__: { polluted: yes }\nconstructor: { prototype: { polluted: yes } }\n`,
    ],
    ["a name of a megabyte", name("x".repeat(1_000_000))],
    ["a name of half a megabyte of brackets", name(`"${"[".repeat(500_000)}"`)],
    ["twenty thousand fields", Array.from({ length: 20_000 }, (_, i) => `f${i}: 1`).join("\n")],
    [
      "twenty thousand lines of course",
      text.replace(/course:/, `course:\n${"      - recheck day 3\n".repeat(20_000)}    old:`),
    ],
    ["half a character", name('"\\ud83d"')],
    ["half a character in a field's name", `${text}\n"\\udc3e": x\n`],
    ["a tag", "--- !!js/function 'x'\n"],
    ["two documents", `${text}\n---\n${text}`],
    ["UTF-16", `\ufeff${[...text].join("\0")}`],
  ])("%s", async (_, plan) => {
    expect(await open({ plan: new TextEncoder().encode(plan) })).toBe("problems");
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
  });
});

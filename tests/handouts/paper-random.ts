import fc from "fast-check";
import type { Block, Cell, Handout, Inline, Item, Leaf, Month, Section, Shape } from "#handout/handout.js";
import { plainLetter } from "./letter.js";

/**
 * Random sheets: every kind of node, in amounts from none to too many, with words from very short to longer than a line.
 * Each stretch of words begins with a number of its own ("17.") in the order of the tree, so that none can hide.
 */
const from = "plan.yaml:3:4";
const lexicon = [
  ..."a is the of to dog wound clean bandage every morning ring clinic gauze swelling medicine appointment".split(" "),
  ..."amoxicillin-clavulanate señal jaulón ½ 12:30 $1,240.00 (maybe) https://example.org/a/very/long/path".split(" "),
  "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft",
];
const words = (most: number) =>
  fc.array(fc.constantFrom(...lexicon), { minLength: 1, maxLength: most }).map((parts) => parts.join(" "));

const text = (most: number): fc.Arbitrary<Inline> =>
  fc.tuple(words(most), fc.boolean()).map(([said, strong]) => ({
    kind: "text",
    text: said,
    ...(strong ? { strong: true as const } : {}),
  }));
const typed: fc.Arbitrary<Inline> = fc.constantFrom<Inline>(
  { kind: "phone", e164: "+13125550142", text: "(312) 555-0142", from },
  { kind: "email", address: "desk@example.org", text: "desk@example.org", from },
  { kind: "when", iso: "2026-03-07", text: "Saturday, March 7", from },
  { kind: "money", minor: 124000, currency: "USD", text: "$1,240.00", from },
  { kind: "dose", medicine: "m", amount: "0.5", unit: "tablet", text: "half a tablet", from },
  { kind: "tick", label: "given" },
  { kind: "statement", id: "s", inlines: [{ kind: "text", text: "Breathing is hard" }], from },
  { kind: "passage", language: "es", inlines: [{ kind: "text", text: "Vaya ya" }] },
);
const line = (most: number) =>
  fc.array(fc.oneof({ weight: 3, arbitrary: text(most) }, typed), { minLength: 1, maxLength: 4 });
const item: fc.Arbitrary<Item> = fc
  .tuple(line(14), fc.option(line(10), { nil: undefined }))
  .map(([inlines, note]) => (note ? { inlines, note } : { inlines }));
const align = fc.constantFrom<Cell["align"]>("start", "center", "end");

const table: fc.Arbitrary<Leaf> = fc
  .record({
    columns: fc.integer({ min: 1, max: 12 }),
    rows: fc.integer({ min: 0, max: 40 }),
    foot: fc.integer({ min: 0, max: 2 }),
    most: fc.constantFrom(1, 2, 6),
  })
  .chain(({ columns, rows, foot, most }) => {
    const cell: fc.Arbitrary<Cell> = fc.record({
      inlines: fc.oneof(
        { weight: 4, arbitrary: text(most).map((said) => [said]) },
        typed.map((only): Inline[] => [only]),
        fc.constant<Inline[]>([]),
      ),
      align,
    });
    const row = fc.array(cell, { minLength: columns, maxLength: columns });
    return fc.record({
      kind: fc.constant("table" as const),
      caption: line(6),
      head: row,
      rows: fc.array(row, { minLength: rows, maxLength: rows }),
      foot: fc.array(row, { minLength: foot, maxLength: foot }),
    });
  });

const month: fc.Arbitrary<Month> = fc.record({
  kind: fc.constant("month" as const),
  iso: fc.constant("2026-03"),
  title: words(3),
  weekdays: fc.constant(["Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"].map((short) => ({ short, long: `${short}day` }))),
  weeks: fc.array(
    fc.array(
      fc.record({
        iso: fc.constant("2026-03-07"),
        text: fc.integer({ min: 1, max: 31 }).map(String),
        label: fc.constant("a day"),
        inMonth: fc.boolean(),
        marks: fc.subarray(
          (["discharge", "booked", "expected", "possible", "closed"] as const).map((mark) => ({ mark, text: mark })),
          { maxLength: 2 },
        ),
      }),
      { minLength: 7, maxLength: 7 },
    ),
    { minLength: 4, maxLength: 6 },
  ),
  legend: fc.array(
    words(12).map((said) => ({ mark: "booked" as const, text: said })),
    { maxLength: 5 },
  ),
});

const figure: fc.Arbitrary<Leaf> = fc.record({
  kind: fc.constant("figure" as const),
  id: fc.constant("drawing"),
  width: fc.integer({ min: 60, max: 900 }),
  height: fc.integer({ min: 40, max: 900 }),
  shapes: fc.constant<Shape[]>([{ path: "M0 0L40 40H10Z", fill: "pale", stroke: "ink" }]),
  labels: fc.array(
    fc.record({
      text: fc.constantFrom("rim", "nose", "two fingers"),
      x: fc.integer({ min: 0, max: 60 }),
      y: fc.integer({ min: 15, max: 40 }),
      size: fc.integer({ min: 12, max: 16 }),
      align,
    }),
    { maxLength: 3 },
  ),
  alt: fc.constant("a drawing"),
  caption: line(10),
});

const leaf: fc.Arbitrary<Leaf> = fc.oneof(
  fc.record({
    kind: fc.constant("paragraph" as const),
    role: fc.constantFrom("lead", "body", "small"),
    inlines: line(40),
  }),
  fc.record({
    kind: fc.constant("list" as const),
    mark: fc.constantFrom("bullet", "number", "tick"),
    items: fc.array(item, { minLength: 1, maxLength: 14 }),
  }),
  table,
  month,
  figure,
  fc.record({ kind: fc.constant("signature" as const), lines: fc.array(line(4), { minLength: 1, maxLength: 6 }) }),
);

const columns: fc.Arbitrary<Block> = fc
  .array(fc.array(leaf, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 })
  .map((columns) => ({ kind: "columns", columns }));
const block: fc.Arbitrary<Block> = fc.oneof({ weight: 6, arbitrary: leaf }, { weight: 1, arbitrary: columns });

const part: fc.Arbitrary<Section> = fc.record({
  kind: fc.constant("section" as const),
  id: fc.constant("part"),
  level: fc.constant(3 as const),
  weight: fc.constant("plain" as const),
  title: text(5).map((only) => [only]),
  blocks: fc.array(block, { minLength: 1, maxLength: 3 }),
});
const section: fc.Arbitrary<Section> = fc.record({
  kind: fc.constant("section" as const),
  id: fc.constant("section"),
  level: fc.constant(2 as const),
  weight: fc.constantFrom("urgent", "plain"),
  title: text(5).map((only) => [only]),
  blocks: fc.array(fc.oneof({ weight: 3, arbitrary: block }, part), { minLength: 1, maxLength: 4 }),
});

/** Puts its number before each stretch of printed words. */
function numbered<T>(tree: T): T {
  let count = 0;
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== "object" || value === null) return value;
    const fields = value as Record<string, unknown>;
    const printed = fields["kind"] === "text" ? `${++count}. ${String(fields["text"])}` : null;
    return Object.fromEntries(
      Object.entries(fields).map(([key, inner]) => [key, key === "text" && printed !== null ? printed : walk(inner)]),
    );
  };
  return walk(tree) as T;
}

export const randomHandout: fc.Arbitrary<Handout> = fc
  .record({ title: words(10), name: words(6), subtitle: line(8), sections: fc.array(section, { maxLength: 6 }) })
  .map(({ title, name, subtitle, sections }) =>
    numbered<Handout>({
      language: "en",
      direction: "ltr",
      title,
      subtitle,
      running: { patient: name, date: "Monday, March 2, 2026", clinic: name },
      pageWords: { before: "Page ", between: " of ", after: "", digits: "0123456789" },
      issued: "2026-03-02T16:30",
      zone: "America/Chicago",
      subject: title,
      clinic: { name, address: ["18 Juniper Row", "Riverbend, IL 60000"], email: null },
      translationNotice: [],
      sections,
      events: [],
      calendarName: "Visits",
      letter: plainLetter,
    }),
  );

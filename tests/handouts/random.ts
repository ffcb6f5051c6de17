import fc from "fast-check";
import type {
  Block,
  Cell,
  Dose,
  Email,
  Handout,
  Inline,
  Item,
  Leaf,
  Money,
  Phone,
  Section,
  When,
} from "#handout/handout.js";
import { everyNode, hostile } from "./every-node.js";

const from = "plan.yaml:1:1";

/** Words a person might write, in Latin letters, with everything in them that means something to some format. */
export const latinWords = fc.oneof(
  fc.lorem({ maxCount: 8 }),
  fc.string({ unit: "grapheme-ascii", maxLength: 30 }),
  fc.constantFrom(hostile, "<script>alert(1)</script>", "{{{x}}}", "&amp;", "\\n;,", "- [ ] ~~x~~", "1½ ñ ü €"),
);

/** A random handout: nested sections, every kind of block, lines of every kind of inline. */
export const randomHandout = (words: fc.Arbitrary<string> = latinWords): fc.Arbitrary<Handout> => {
  const day = fc.integer({ min: 1, max: 28 }).map((n) => `2026-03-${String(n).padStart(2, "0")}`);
  const small: fc.Arbitrary<Inline> = fc.oneof(
    words.map((text) => ({ kind: "text" as const, text })),
    words.map((text) => ({ kind: "text" as const, text, strong: true as const })),
    words.map((label) => ({ kind: "tick" as const, label: `tick ${label}` })),
    fc.record<When>({
      kind: fc.constant("when"),
      iso: fc.oneof(day, fc.constant("2026-03-07/2026-03-10"), fc.constant("2026-03-07T09:30")),
      text: words,
      from: fc.constant(from),
    }),
    fc.record<Dose>({
      kind: fc.constant("dose"),
      medicine: fc.constant("carprofen"),
      amount: fc.constantFrom("0.5", "1", "1.5"),
      unit: fc.constant("tablet"),
      text: words,
      from: fc.constant(from),
    }),
    fc.record<Money>({
      kind: fc.constant("money"),
      minor: fc.nat(1_000_000),
      currency: fc.constant("USD"),
      text: words,
      from: fc.constant(from),
    }),
    // The words of a phone are a number as its country writes it, never a person's own.
    fc.integer({ min: 10, max: 99 }).map<Phone>((n) => ({
      kind: "phone",
      e164: `+131255501${n}`,
      text: `(312) 555-01${n}`,
      from,
    })),
    fc.record<Email>({
      kind: fc.constant("email"),
      address: fc.constant("desk@juniper-row.example.org"),
      text: words,
      from: fc.constant(from),
    }),
  );
  const leaves = fc.array(small, { maxLength: 4 });
  const inline: fc.Arbitrary<Inline> = fc.oneof(
    { weight: 6, arbitrary: small },
    { weight: 2, arbitrary: leaves.map((inlines) => ({ kind: "statement" as const, id: "sign", inlines, from })) },
    { weight: 1, arbitrary: leaves.map((inlines) => ({ kind: "passage" as const, language: "es", inlines })) },
  );
  const line = fc.array(inline, { maxLength: 5 });
  const item: fc.Arbitrary<Item> = fc.oneof(
    line.map((inlines) => ({ inlines })),
    fc.record({ inlines: line, note: line }),
  );
  const cell: fc.Arbitrary<Cell> = fc.record({ inlines: line, align: fc.constantFrom("start", "center", "end") });
  const table = fc.integer({ min: 1, max: 5 }).chain((columns) => {
    const cells = fc.array(cell, { minLength: columns, maxLength: columns });
    const rows = (max: number) => fc.array(cells, { maxLength: max });
    return fc.record({ kind: fc.constant("table" as const), caption: line, head: cells, rows: rows(4), foot: rows(2) });
  });
  const leaf: fc.Arbitrary<Leaf> = fc.oneof(
    fc.record({
      kind: fc.constant("paragraph" as const),
      role: fc.constantFrom("lead", "body", "small"),
      inlines: line,
    }),
    fc.record({
      kind: fc.constant("list" as const),
      mark: fc.constantFrom("bullet", "number", "tick"),
      items: fc.array(item, { minLength: 1, maxLength: 4 }),
    }),
    table,
    fc.record({ kind: fc.constant("signature" as const), lines: fc.array(line, { minLength: 1, maxLength: 3 }) }),
  );
  const block: fc.Arbitrary<Block> = fc.oneof(
    { weight: 5, arbitrary: leaf },
    {
      weight: 1,
      arbitrary: fc
        .array(fc.array(leaf, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 })
        .map((columns) => ({ kind: "columns" as const, columns })),
    },
  );
  const sections = <B extends Block | Section>(level: 2 | 3, blocks: fc.Arbitrary<B>): fc.Arbitrary<Section> =>
    fc.record({
      kind: fc.constant("section" as const),
      id: fc.uuid().map((id) => `s-${id}`),
      level: fc.constant(level),
      weight: fc.constantFrom("urgent", "plain"),
      title: line.map((title) => [{ kind: "text" as const, text: "About " }, ...title]),
      blocks: fc.array(blocks, { maxLength: 4 }),
    });
  const whole = sections(2, fc.oneof({ weight: 3, arbitrary: block }, { weight: 1, arbitrary: sections(3, block) }));
  return fc
    .record({
      title: words.map((title) => `Going home: ${title}`),
      subtitle: line,
      translationNotice: line,
      sections: fc.array(whole, { maxLength: 4 }),
    })
    .map((parts) => numbered({ ...everyNode, ...parts }));
};

/** Each value begins with a word of its own, "dose17", so that finding it somewhere means that this one was printed. */
const numbered = (handout: Handout): Handout => {
  let count = 0;
  return JSON.parse(JSON.stringify(handout), (_, node) => {
    if (node === null || typeof node !== "object" || !("kind" in node)) return node;
    if (node.kind === "statement") {
      return { ...node, inlines: [{ kind: "text", text: `statement${++count}. ` }, ...node.inlines] };
    }
    return values.has(node.kind) ? { ...node, text: `${node.kind}${++count}. ${node.text}` } : node;
  });
};

const values = new Set(["when", "dose", "money", "phone", "email"]);

/** Whatever a reader must find in every format: doses, statements, dates, amounts, phones, and all other words of a line. */
export const valuesOf = (handout: Handout): string[] => {
  const found: string[] = [];
  const look = (node: unknown): void => {
    if (node === null || typeof node !== "object") return;
    if ("kind" in node && "text" in node && typeof node.text === "string") found.push(node.text);
    for (const child of Object.values(node)) look(child);
  };
  look([handout.subtitle, handout.translationNotice, handout.sections]);
  return found;
};

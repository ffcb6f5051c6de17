import fc from "fast-check";
import { expect, it } from "vitest";
import { inlinesIn, sectionsIn, wordsOf } from "#handout/walk.js";
import { compose, type Handout } from "#index.js";
import { dog, house, lay, ours } from "./house.js";

const done = "templates/handout/done.hbs";
const secret = "a-secret-of-this-process";
process.env["HEARTHSHEET_TEST_SECRET"] = secret;

/** A name that would be markup, a template, or a section of the page, if any value were ever read again. */
const name = "**Rex** {{constructor}} <b>x</b> [y](https://example.org)";
const facts = { ...dog, patient: { ...dog.patient, name } };

const shapeOf = ({ sections }: Handout) =>
  [...sectionsIn({ sections })].map(({ id, level, blocks }) => [id, level, blocks.map(({ kind }) => kind)]);
const linesOf = (page: Handout) => [...inlinesIn(page)].map((inline) => wordsOf([inline]));

/** What would show that a template has reached something else than the facts. */
const reached = /\[native code\]|function|\[object|=>|undefined|require|a-secret-of-this-process|root:x:/;

const word = fc.constantFrom(
  ..."constructor __proto__ prototype toString valueOf hasOwnProperty process env mainModule require global globalThis".split(
    " ",
  ),
  ..."lookup log helperMissing blockHelperMissing eval Function import fs readFileSync patient name this length key root".split(
    " ",
  ),
  ...[
    "@root",
    "@partial-block",
    "..",
    "[constructor]",
    '"constructor"',
    '"name"',
    '"/etc/passwd"',
    "1",
    "say",
    "is",
    "value",
    "told",
  ],
  ...["HEARTHSHEET_TEST_SECRET", "with", "if", "each", "inline", "handout/ring", "reason", "medicines"],
);
const path = fc.array(word, { minLength: 1, maxLength: 4 }).map((words) => words.join("."));
const call = fc
  .tuple(
    path,
    fc.array(
      fc.oneof(
        path,
        path.map((one) => `(lookup this "${one}")`),
        path.map((one) => `x=${one}`),
      ),
      { maxLength: 3 },
    ),
  )
  .map((parts) => parts.flat().join(" "));
const piece = fc.oneof(
  call.map((inside) => `{{${inside}}}`),
  call.map((inside) => `{{{${inside}}}}`),
  call.map((inside) => `{{> ${inside}}}`),
  call.map((inside) => `{{> (${inside})}}`),
  call.map((inside) => `{{#*inline "x"}}{{${inside}}}{{/inline}}{{> x}}`),
  call.map((inside) => `{{#> handout/ring}}{{${inside}}}{{/handout/ring}}`),
  fc.tuple(path, call).map(([of, inside]) => `{{#with ${of}}}{{${inside}}}{{/with}}`),
  fc.tuple(path, call).map(([of, inside]) => `{{#each ${of} as |say x|}}{{${inside}}}{{say}}{{x}}{{/each}}`),
  fc.tuple(path, call).map(([of, inside]) => `{{#${of}}}{{${inside}}}{{/${of}}}`),
  fc.tuple(path, path).map(([of, inside]) => `{{#if (${of} ${inside})}}{{lookup . "${inside}"}}{{/if}}`),
);

it("a template reaches no prototype, no file and nothing of the process, whatever is written in it", () => {
  const before = Object.getOwnPropertyNames(Object.prototype).join();
  let ran = 0;
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 3 }), (pieces) => {
      const { value: own } = lay({ name: done, text: `${ours(done)}\n${pieces.join("\n")}\n` });
      const page = own && compose(facts, own, { language: "en" }).value;
      if (!page) return;
      ran++;
      expect(linesOf(page).filter((line) => reached.test(line.replaceAll(name, "")))).toEqual([]);
      expect(shapeOf(page).map(([id]) => id)).toEqual(plain.map(([id]) => id));
    }),
    { numRuns: 400, examples: [[["{{patient.name}}"]], [["{{#with patient}}{{name}}{{/with}}"]]] },
  );
  expect(ran).toBeGreaterThan(1);
  expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(before);
});

it.each([
  ["a value by the name of a string", '{{"zone"}}'],
  ["a value by a name that is a helper's", "{{#with patient as |say|}}{{say}}{{/with}}"],
  ["a lookup", '{{lookup patient "constructor"}}'],
  ["a lookup in what a partial is given", '{{> handout/sign x=(lookup this "constructor")}}'],
  ["a lookup beside a value", '{{patient.name x=(lookup this "constructor")}}'],
  ["a word logged", "{{log patient.name}}"],
  ["a record's prototype", "{{reason.constructor}}"],
  ["a partial made on the way", '{{#*inline "x"}}y{{/inline}}'],
  ["a partial with a body", "{{#> handout/sign}}y{{/handout/sign}}"],
  ["a partial named by a value", "{{> (lookup this zone)}}"],
  ["a hole", "\ue000\ue010\ue001"],
])("refused before it runs: %s", (_what, text) => {
  const { value, problems } = lay({ name: done, text });
  expect(value).toBeNull();
  for (const { at } of problems) expect(at).toMatchObject({ file: done, line: 1 });
});

const plain = shapeOf(compose(facts, house, { language: "en" }).value ?? expect.fail());

it("a text is words on the page, or is refused: it becomes no markup, no section and no other value", () => {
  const bit = fc.constantFrom(
    ..."a é 数 # ## - + > 1. | ` ~ _ * ** *** \\ [ ] ( ) < > <b> </b> ::: :: ::section{#x} {{when}} {{name}} {{constructor}} {{ }}".split(
      " ",
    ),
    ..." |\n|\t|\u202e|\u2028|\ud800|\ue000\ue010\ue001|[x](https://example.org)|![x](y)|<script>|&lt;|https://example.org|- [ ]".split(
      "|",
    ),
  );
  let ran = 0;
  fc.assert(
    fc.property(fc.array(bit, { maxLength: 6 }), fc.constantFrom("visit", "title"), (bits, key) => {
      const words = key === "visit" ? `**x** {{when}}${bits.join("")}` : bits.join("");
      const text = JSON.stringify({ next: { [key]: words } });
      const { value: own } = lay({ name: "locales/en/handout.json", text });
      const page = own && compose(facts, own, { language: "en" }).value;
      if (!page) return;
      ran++;
      expect(shapeOf(page)).toEqual(plain);
      const shown = words
        .replaceAll("**", "")
        .split(/\{\{\w+\}\}/)
        .map((part) => part.trim());
      const all = [...sectionsIn(page)]
        .map(({ title }) => wordsOf(title))
        .concat(linesOf(page))
        .join("\n");
      for (const part of shown) expect(all.replace(/\s+/g, " ")).toContain(part.replace(/\s+/g, " "));
    }),
    { numRuns: 300 },
  );
  expect(ran).toBeGreaterThan(10);
});

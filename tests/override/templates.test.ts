import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { compose } from "#index.js";
import { cat, dog, house, laid, lay, ours, pageWith, told } from "./house.js";

const goNow = "templates/handout/go-now.hbs";
const done = "templates/handout/done.hbs";
const ring = "templates/handout/ring.hbs";
const root = "templates/handout/handout.hbs";
const medicines = "templates/handout/medicines.hbs";
const own = (name: string, text: string) => ({ name, text });
const changed = (name: string, from: string | RegExp, to: string) => {
  const text = ours(name).replace(from, to);
  expect(text).not.toBe(ours(name));
  return own(name, text);
};
const titles = (files: Parameters<typeof pageWith>[0]) =>
  pageWith(files).value?.sections.map(({ id }) => id) ?? expect.fail();

describe("a template of a clinic's own", () => {
  it("stands for ours of its name, and is listed with its hash", () => {
    const text = '::section{#done}\n## {{say "handout:done.title"}}\n\n{{told reason}}\n';
    const { overrides } = laid(own(done, text));
    expect(overrides).toEqual([{ name: done, file: done, sha256: createHash("sha256").update(text).digest("hex") }]);
    const page = pageWith([own(done, text)]);
    expect(page.problems).toEqual([]);
    const section = page.value?.sections.find(({ id }) => id === "done");
    expect(section?.blocks).toHaveLength(1);
    expect(house.overrides).toEqual([]);
  });

  it("may put sections in another order", () => {
    const text = ours(root)
      .replace("{{> handout/ring}}\n", "")
      .replace("{{> handout/go-now}}", "{{> handout/go-now}}\n{{> handout/ring}}");
    expect(titles([own(root, text)]).slice(0, 3)).toEqual(["next", "go-now", "ring"]);
  });

  it("may go without what nobody comes to harm for", () => {
    const text = ours(root).replace(/\{\{> handout\/(done|normal|log|estimate|questions|sign)\}\}\n/g, "");
    const ids = titles([own(root, text)]);
    for (const id of ["done", "normal", "log", "estimate", "questions", "sign"]) expect(ids).not.toContain(id);
  });

  it("is told as unknown where we have none of its name", () => {
    expect(lay(own("templates/handout/go-nov.hbs", "x")).problems).toMatchObject([
      { code: "override-unknown", values: { near: expect.arrayContaining([goNow]) } },
    ]);
  });

  it("is told by the name its user knows", () => {
    const { problems } = lay({ name: done, file: "ours/overrides/done.hbs", text: "{{patient.nmae}}" });
    expect(told(problems)).toEqual(["template-path-unknown ours/overrides/done.hbs:1:11"]);
  });

  it("holds words of its own with a note: they are in one language", () => {
    const { problems } = lay(own(done, '## {{say "handout:done.title"}}\n\n{{#if care}}We opened it.{{/if}}\n'));
    expect(problems).toMatchObject([
      {
        code: "template-words-literal",
        severity: "note",
        at: { line: 3, column: 13 },
        values: { words: "We opened it." },
      },
    ]);
  });
});

describe("what a handout must tell, no template leaves out", () => {
  it.each([
    ["the signs to go for at once", changed(goNow, "{{#each goNow.first}}\n- {{statement this}}\n{{/each}}", "")],
    [
      "one of several lists of signs",
      changed(goNow, /\{\{#each goNow\.rest\}\}\n- \{\{statement this\}\}\n\{\{\/each\}\}/, ""),
    ],
    ["whom to ring", changed(ring, "{{phone phone}}", "{{name}}")],
    ["the section itself", changed(root, "{{> handout/today}}\n", "")],
    ["the doses", changed("templates/handout/medicine-dose.hbs", /\{\{say "handout:medicines\.line"[^\n]*/g, "x")],
    [
      "the name of a medicine",
      changed(medicines, "### {{medicine medicine}}", '### {{say "handout:medicines.title"}}'),
    ],
    ["a caution", changed("templates/handout/about.hbs", '{{say "handout:about.supports"}}', "")],
    ["a caution about medicines", changed(medicines, '{{say "handout:medicines.never"}}\n', "")],
    ["when to come", changed(root, "{{> handout/calendar}}\n", "")],
    [
      "with all before the first heading, where it is lost",
      changed(
        root,
        /[\s\S]+/,
        `{{#each goNow.first}}\n- {{statement this}}\n{{/each}}\n\n${ours(root).replace("{{> handout/go-now}}", "")}`,
      ),
    ],
    [
      "a sign under the title of another",
      changed("templates/handout/today.hbs", "handout:today.title", "handout:normal.title"),
    ],
  ])("%s", (_what, file) => {
    const { value, problems } = pageWith([file]);
    const drops = problems.filter(({ code }) => code === "override-drops");
    expect(drops.length).toBeGreaterThan(0);
    expect(drops[0]?.at.file).toBe(file.name);
    expect(value).toBeNull();
  });

  it("how long a medicine may be used once it is open", () => {
    const [first, ...rest] = dog.medicines;
    if (!first) throw new Error("the dog has medicines");
    const open = { ...dog, medicines: [{ ...first, onceOpened: { value: "28", unit: "day" } }, ...rest] };
    const { value, problems } = pageWith(
      [changed(medicines, /\{\{#if onceOpened\}\}[\s\S]*?\{\{\/if\}\}\n/, "")],
      {},
      open,
    );
    expect(value).toBeNull();
    expect(told(problems)).toEqual([`override-drops ${medicines}:1:1`]);
  });

  it("is told at the template that leaves it out, not at another of the clinic's", () => {
    const { problems } = pageWith([
      own(done, ours(done)),
      changed(ring, "{{phone phone}}", "{{name}}"),
      own(goNow, ours(goNow)),
    ]);
    expect(told(problems)).toEqual([`override-drops ${ring}:1:1`]);
  });

  it.each(["handout", "first-page", "estimate"] as const)(
    "and ours, laid over themselves, leave nothing out (%s)",
    (document) => {
      const all = Object.keys(house.templates.texts).map((name) => own(name, ours(name)));
      for (const facts of [dog, cat])
        for (const language of ["en", "ar", "zh-Hans"]) {
          const options = { language, document };
          const page = compose(facts, laid(...all), options);
          expect(page.problems).toEqual(compose(facts, house, options).problems);
          expect(page.value).toEqual(compose(facts, house, options).value);
        }
    },
  );

  it("on the label of a medicine and in the letter too", () => {
    const label = changed("templates/labels/labels.hbs", '**{{say "labels:keep"}}**', "");
    const letter = changed("templates/letter/letter.hbs", /phone=\(phone phone\)/g, "phone=name");
    expect(told(pageWith([label, letter]).problems)).toEqual(
      expect.arrayContaining([`override-drops ${label.name}:1:1`, `override-drops ${letter.name}:1:1`]),
    );
  });
});

describe("a template that does not come to an end", () => {
  it("includes itself, alone or through another", () => {
    expect(told(lay(own(done, "## x\n{{> handout/done}}")).problems)).toContain(`template-cycle ${done}:2:1`);
    const through = lay(
      own(done, "{{> handout/sign}}"),
      own("templates/handout/sign.hbs", "{{#if care}}{{> handout/done}}{{/if}}"),
    );
    expect(told(through.problems)).toContain("template-cycle templates/handout/sign.hbs:1:13");
  });

  it.each([
    ["lists in lists", `${"{{#each @root.course.visits}}".repeat(9)}x${"{{/each}}".repeat(9)}`],
    ["words without end", `{{#each course.visits}}${"x ".repeat(60_000)}{{/each}}`],
  ])("or goes on and on: %s", (_what, text) => {
    const { value, problems } = pageWith([own(done, `${ours(done)}\n${text}`)]);
    expect(told(problems)).toEqual([`template-endless ${done}:1:1`]);
    expect(value).toBeNull();
  });

  it("templates that include the next one twice, and that the next one twice", () => {
    const names = Object.keys(house.templates.texts).filter(
      (name) => name !== root && name.startsWith("templates/handout/"),
    );
    const files = names.map((name, i) => {
      const next = names[i + 1]?.replace(/^templates\/(.*)\.hbs$/, "{{> $1}}") ?? "";
      return own(name, `${next}\n${next}\n`);
    });
    const begin = own(root, `${ours(root)}\n{{> handout/about}}`);
    expect(pageWith([begin, ...files]).problems.map(({ code }) => code)).toContain("template-endless");
  });
});

describe("a template that fails", () => {
  it.each([
    ["a helper given what it cannot put into words", "{{when patient}}", "{{when}}"],
    ["a number of nothing", "{{phone patient}}", "{{phone}}"],
    ["an object where there are to be words", "{{clinic}}", "{{value}}"],
    ["a helper without its value", "{{medicine}}", "{{medicine}}"],
  ])("%s", (_what, text, detail) => {
    const { value, problems } = pageWith([own(done, `${ours(done)}\n${text}\n`)]);
    expect(problems).toMatchObject([{ code: "template-failed", at: { file: done }, values: { detail } }]);
    expect(value).toBeNull();
  });
});

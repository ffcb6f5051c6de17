import { describe, expect, it } from "vitest";
import { wordsOf } from "#handout/walk.js";
import { explain, languages, reviewOf } from "#index.js";
import { statusesOf } from "#locale/status/status.js";
import { house, laid, lay, layOver, pageWith, told } from "./house.js";

const texts = (tag: string, file: string, messages: unknown) => ({
  name: `locales/${tag}/${file}.json`,
  text: JSON.stringify(messages, null, 2),
});
const title = (words: string) => texts("en", "handout", { ring: { title: words } });
const codes = (...files: Parameters<typeof lay>) => told(lay(...files).problems);

describe("a text of a clinic's own", () => {
  it("stands for ours, in its language alone, and is listed by the name of its sentence", () => {
    const file = title("Who to ring");
    expect(laid(file).overrides).toEqual([
      {
        name: file.name,
        file: file.name,
        sha256: expect.stringMatching(/^[0-9a-f]{64}$/),
        texts: ["handout:ring.title"],
      },
    ]);
    const ring = (language: string) =>
      wordsOf(pageWith([file], { language }).value?.sections.find(({ id }) => id === "ring")?.title ?? []);
    expect(ring("en")).toBe("Who to ring");
    expect(ring("es")).toBe("A quién llamar");
  });

  it("is told where a variant goes on saying it its own way, unless the variant has one too", () => {
    const file = title("Who to ring");
    expect(codes(file)).toEqual(["override-elsewhere locales/en/handout.json:3:14"]);
    expect(codes(file, texts("en-GB", "handout", { ring: { title: "Who to ring" } }))).toEqual([]);
  });

  it("stands for ours with all its forms", () => {
    const forms = {
      medicines: { "needed-most_one": "{{count}} in {{every}}.", "needed-most_other": "{{count}} in {{every}}." },
    };
    expect(codes(texts("en", "handout", forms))).toEqual([]);
    const one = { medicines: { "needed-most_one": forms.medicines["needed-most_one"] } };
    expect(codes(texts("en", "handout", one))).toEqual(["translation-plurals locales/en/handout.json:3:24"]);
  });

  it("goes with a template of the clinic's own", () => {
    const page = pageWith([
      title("Who to ring"),
      { name: "templates/handout/done.hbs", text: '## {{say "handout:ring.title"}}\n\n{{told reason}}\n' },
    ]);
    expect(
      page.value?.sections.map((one) => wordsOf(one.title)).filter((words) => words === "Who to ring"),
    ).toHaveLength(2);
  });

  it.each([
    [
      "a key we have not",
      texts("en", "handout", { ring: { titel: "x" } }),
      "override-unknown locales/en/handout.json:3:14",
    ],
    ["a file we have not", texts("en", "handuot", {}), "override-unknown locales/en/handuot.json:1:1"],
    ["a language we have not", texts("tlh", "handout", {}), "override-unknown locales/tlh/handout.json:1:1"],
    ["who has read it", texts("es", "status", {}), "override-unknown locales/es/status.json:1:1"],
    ["what a language may", texts("en", "guard", {}), "override-unknown locales/en/guard.json:1:1"],
    [
      "a form there is none of",
      texts("en", "handout", { ring: { title_: "x" } }),
      "override-unknown locales/en/handout.json:3:15",
    ],
    [
      "a prototype",
      { name: "locales/en/handout.json", text: '{"__proto__": {"a": "x"}}' },
      "override-unknown locales/en/handout.json:1:21",
    ],
    ["no JSON", { name: "locales/en/handout.json", text: "{" }, "locale-syntax locales/en/handout.json:1:1"],
    ["a list", { name: "locales/en/handout.json", text: "[]" }, "locale-syntax locales/en/handout.json:1:1"],
    ["nothing", title(""), "override-empty locales/en/handout.json:3:14"],
    ["only a dash", title(" – "), "override-empty locales/en/handout.json:3:14"],
    ["a value that ours lacks", title("{{phone}}"), "translation-values locales/en/handout.json:3:14"],
    [
      "a value that is lost",
      texts("en", "handout", { next: { visit: "**Soon**" } }),
      "translation-values locales/en/handout.json:3:14",
    ],
    ["a heading", title("# Who"), "translation-markup locales/en/handout.json:3:14"],
    ["a directive", title("::section{#x}"), "translation-markup locales/en/handout.json:3:14"],
    ["a link", title("[Who](https://example.org)"), "translation-markup locales/en/handout.json:3:14"],
    ["two lines", title("Who\n\n## Else"), "translation-markup locales/en/handout.json:3:14"],
    ["an order turned round", title("Who \u202e to call"), "translation-markup locales/en/handout.json:3:14"],
    ["half a character", title("Who \ud800"), "translation-markup locales/en/handout.json:3:14"],
    ["a hole", title("Who \ue000\ue010\ue001"), "translation-markup locales/en/handout.json:3:14"],
  ])("is told where it stands: %s", (_what, file, expected) => {
    const found = lay(file as never);
    expect(told(found.problems)).toEqual([expected]);
    expect(found.value).toBeNull();
  });

  it("that nests without end is told as no text", () => {
    const deep = `${'{"a":'.repeat(100_000)}"x"${"}".repeat(100_000)}`;
    expect(codes({ name: "locales/en/handout.json", text: deep })).toEqual([
      "locale-syntax locales/en/handout.json:1:1",
    ]);
  });

  it("near names are told", () => {
    const { problems } = lay(texts("en", "handout", { ring: { titel: "x" } }));
    const [found] = problems;
    expect(found && explain(found, house, "en").hint).toContain("ring.title");
  });

  it("with other figures asks for a reason, which must say for which sentence in which language", () => {
    const { value, problems } = lay(title("Who to call, 24 hours"));
    expect(value).not.toBeNull();
    expect(problems).toMatchObject([
      {
        code: "override-figures",
        severity: "ask",
        values: { language: "en", key: "handout:ring.title", wanted: [], found: ["24"] },
      },
      { code: "override-elsewhere", severity: "note" },
    ]);
  });

  it("all that is wrong is told at once", () => {
    expect(codes(title(""), texts("de", "handout", { ring: { title: "# x", open: "{{a}}" } }))).toHaveLength(3);
  });
});

describe("who has read it", () => {
  const own = laid(texts("es", "handout", { ring: { title: "A quién llamar ahora" } }));
  const stateOf = (name: string) => statusesOf(own.locales, "es").find((one) => one.name === name);

  it("what the clinic wrote is the clinic's, and what is ours stays as it was", () => {
    expect(stateOf("handout:ring.title")).toMatchObject({ own: true, stale: false, by: "nobody" });
    expect(stateOf("handout:ring.open")).toEqual(
      statusesOf(house.locales, "es").find(({ name }) => name === "handout:ring.open"),
    );
    const [spanish, before] = [own, house].map((one) => languages(one).find(({ tag }) => tag === "es"));
    expect(spanish?.reviewed.clinic).toBe(1);
    expect(before?.reviewed.clinic).toBe(0);
    expect(reviewOf(own, "es")).toBe("unreviewed");
  });

  it("a clinic's own English makes no translation of ours stale", () => {
    const english = laid(title("Who to ring"));
    expect(languages(english).find(({ tag }) => tag === "es")).toEqual(
      languages(house).find(({ tag }) => tag === "es"),
    );
  });

  it("a house laid over again holds only what is laid last", () => {
    const again = layOver(own, title("Who to ring")).value ?? expect.fail();
    expect(again.overrides.map(({ name }) => name)).toEqual(["locales/en/handout.json"]);
    expect(statusesOf(again.locales, "es")).toEqual(statusesOf(house.locales, "es"));
  });
});

import { describe, expect, it } from "vitest";
import type { Messages } from "#locale/locales.js";
import { tellProblem } from "#locale/tell.js";
import { speak } from "#locale/voice.js";
import { placeholders } from "#locale/words.js";
import { codes } from "#problems/problem.js";
import { locales } from "../compose/shipped.js";

/** Every message of a language by whole key. */
function all(language: string): Map<string, string> {
  const found = new Map<string, string>();
  const add = (prefix: string, messages: Messages) => {
    for (const [name, message] of Object.entries(messages))
      if (typeof message === "string") found.set(prefix + name, message);
      else add(`${prefix}${name}.`, message);
  };
  for (const [namespace, messages] of Object.entries(locales.messages[language] ?? {})) add(`${namespace}:`, messages);
  return found;
}

const english = all("en");
/** Plural and context are a language's own affair: "when_one", "dog_female" stand for "when", "dog". */
const stem = (key: string) => key.replace(/(_(zero|one|two|few|many|other|female|male))+$/, "");
const stems = (messages: Map<string, string>) => [...new Set([...messages.keys()].map(stem))].sort();
const shown = (messages: Map<string, string>, of: string) =>
  [
    ...new Set([...messages].filter(([key]) => stem(key) === of).flatMap(([, message]) => placeholders(message))),
  ].sort();

describe.each(locales.tags)("%s", (language) => {
  const own = all(language);

  it("says all that English says, and no more", () => expect(stems(own)).toEqual(stems(english)));

  it("shows the same values as English in each message", () => {
    // The animal's own name may be needed in one language and not in another.
    const values = (messages: Map<string, string>) =>
      stems(english).map((key) => [key, shown(messages, key).filter((value) => value !== "name")]);
    expect(values(own)).toEqual(values(english));
  });

  it("has every plural its grammar asks for (CLDR)", () => {
    const needed = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
    const plural = [...own.keys()].filter((key) => key.endsWith("_other"));
    const missing = plural.flatMap((key) =>
      needed.map((category) => key.replace(/other$/, category)).filter((form) => !own.has(form)),
    );
    expect(missing).toEqual([]);
  });

  it("holds no characters that holes are made of, and no unfinished placeholder", () => {
    const wrong = [...own].filter(([, message]) => /[\uE000-\uF8FF]|\{\{(?!\w+\}\})|(?<!\{\{\w+)\}\}/.test(message));
    expect(wrong).toEqual([]);
  });

  it.each(codes)("words the problem %s", (code) => {
    const voice = speak(locales, language);
    const values = Object.fromEntries(
      [
        ...placeholders(voice.message(`problems:${code}.what`)),
        ...placeholders(voice.message(`problems:${code}.hint`)),
      ].map((name) => [name, "x"]),
    );
    const told = tellProblem(
      { code, severity: "stop", at: { file: "f", line: 1, column: 1, length: 1 }, values } as never,
      voice,
    );
    expect(told.what).not.toBe("");
  });
});

it("days, money and lists in a problem are put into words", () => {
  const at = { file: "f", line: 1, column: 1, length: 1 };
  const told = tellProblem(
    { code: "discharge-not-today", severity: "ask", at, values: { discharged: { day: "2026-03-02" } } },
    speak(locales, "en", "US"),
  );
  expect(told.what).toContain("March 2, 2026");
  const near = { code: "field-unknown", severity: "stop", at } as const;
  const hint = (names: string[]) =>
    tellProblem({ ...near, values: { field: "wieght", near: names, known: ["weight", "name"] } }, speak(locales, "en"))
      .hint;
  expect(hint(["weight"])).toBe("Did you mean weight?");
  expect(hint([])).toBe("The fields here are weight or name.");
});

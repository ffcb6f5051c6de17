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

describe.each(locales.tags)("%s", (language) => {
  const own = all(language);

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
    {
      code: "discharge-not-today",
      severity: "ask",
      at,
      values: { discharged: { day: "2026-03-02" }, today: { day: "2026-03-09" } },
    },
    speak(locales, "en", "US"),
  );
  expect(told.what).toContain("March\u00a02, 2026");
  const near = { code: "field-unknown", severity: "stop", at } as const;
  const hint = (names: string[]) =>
    tellProblem({ ...near, values: { field: "wieght", near: names, known: ["weight", "name"] } }, speak(locales, "en"))
      .hint;
  expect(hint(["weight"])).toBe("Did you mean weight?");
  expect(hint([])).toBe("The fields here are weight or name.");
});

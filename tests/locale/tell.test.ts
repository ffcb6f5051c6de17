import { expect, it } from "vitest";
import { openLocales } from "#locale/locales.js";
import { tellProblem } from "#locale/tell.js";
import { speak } from "#locale/voice.js";
import type { Problem } from "#problems/problem.js";

const words = (file: string, text: object) => ({ [`locales/en/${file}.json`]: JSON.stringify(text) });
const at = { file: "plan.yaml", line: 1, column: 1, length: 1 };

it("tells a problem that nobody has put into words by its code and values", () => {
  const locales = openLocales(words("problems/plan", { "unit-missing": { what: "{{given}}: which unit?" } })).value;
  if (!locales) throw new Error("no locales");
  const voice = speak(locales, "en");
  const unworded = { code: "new-kind", severity: "note", at, values: { given: "24.6", units: ["kg", "lb"] } };
  expect(tellProblem(unworded as unknown as Problem, voice)).toEqual({
    what: "new-kind (given: 24.6; units: kg or lb)",
    hint: "",
  });
  // Half of its words are none.
  const half = { code: "unit-missing", severity: "stop", at, values: { given: "24.6", units: ["kg"] } } as const;
  expect(tellProblem(half, voice).what).toBe("unit-missing (given: 24.6; units: kg)");
});

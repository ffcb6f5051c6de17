import type { Guard } from "./sentence.js";
import { sourceOf } from "./values.js";

/** Signs of units that a translation keeps, or writes as its guard.json says. */
const units = ["mg", "mL", "kg", "cm", "mm", "lb", "IU", "°C", "°F", "%"];

/** Words alone, wide forms and digits of every script as ASCII ones. */
const plain = (text: string): string =>
  text
    .replace(/\{\{[^{}]+\}\}/g, "{}")
    .normalize("NFKC")
    .replace(/\p{Nd}/gu, (digit) => String(digitOf(digit)));

/** The digits of a script follow each other from nought (The Unicode Standard, 4.6). */
function digitOf(digit: string): number {
  const code = digit.codePointAt(0) ?? 0;
  let nought = code;
  while (/^\p{Nd}$/u.test(String.fromCodePoint(nought - 1)) && code - nought < 9) nought--;
  return code - nought;
}

/** "8:00", "4-6", "0,5", "+1 312 555 0142" as the numbers they are made of; how they are joined is the language's affair. */
const numbers = (text: string): string[] => text.match(/\d+/g) ?? [];
const signs = (text: string, own: Record<string, string[]>): string[] =>
  units.filter((unit) => [unit, ...(own[unit] ?? [])].some((sign) => holds(text, sign)));
const holds = (text: string, sign: string): boolean =>
  new RegExp(`(?:^|[\\d\\s{}(/])${sign}(?!\\p{L})`, "u").test(text);

/** Every number and every unit of the source stands in the translation, and no other. Numbers in words are not seen. */
export const checkFigures: Guard = ({ name, source, own }, rules) =>
  own.flatMap((form) => {
    const [model] = sourceOf(form, source);
    if (!model) return [];
    const wanted = [...numbers(plain(model.text)), ...signs(plain(model.text), {})];
    const found = [...numbers(plain(form.text)), ...signs(plain(form.text), rules.units)];
    return [...wanted].sort().join(" ") === [...found].sort().join(" ")
      ? []
      : [{ form, found: { code: "translation-figures" as const, values: { key: name, wanted, found } } }];
  });

import type { Guard } from "./sentence.js";
import { sourceOf } from "./values.js";

/**
 * What Markdown would read as something else than words, what holes and traces are made of, and what turns the order of a line.
 * Emphasis is counted by itself.
 */
const stray =
  /[_\\`#|<>[\]~]|^\s*(?:[-+>]|\d+[.)])\s|::|[\uE000-\uF8FF\u2800-\u28FF\u202A-\u202E\p{Cc}\p{Cs}]|\{\{(?![\w-]+\}\})|(?<!\{\{[\w-]+)\}\}/gu;

const strongs = (text: string): number => (text.match(/\*\*/g) ?? []).length + (text.match(/\*/g) ?? []).length / 1000;
const strays = (text: string): number => (text.replace(/\{\{[\w-]+\}\}/g, "x").match(stray) ?? []).length;

/** As many strong words as the source has, and no more signs that Markdown could read. */
export const checkMarkup: Guard = ({ name, source, own }) =>
  own.flatMap((form) => {
    const [model] = sourceOf(form, source);
    if (!model) return [];
    const same = strongs(form.text) === strongs(model.text) && strays(form.text) <= strays(model.text);
    const values = { key: name, wanted: marks(model.text), found: marks(form.text) };
    return same ? [] : [{ form, found: { code: "translation-markup" as const, values } }];
  });

const marks = (text: string): number => (text.match(/\*/g) ?? []).length + strays(text);

import { placeholders } from "../words.js";
import { type Form, type Guard, sexes } from "./sentence.js";

/** A form that means one or two may leave the number out: Arabic says "two visits" with a word of its own. */
const maySayCount = new Set(["zero", "one", "two"]);

/**
 * A form shows the values its source shows. The animal's name may stand where the source has none, or the other way round:
 * one language needs it where another has a pronoun.
 */
export const checkValues: Guard = ({ name, file, source, own }) => {
  const free = file.includes("/problems/") ? [] : ["name"];
  return own.flatMap((form) => {
    const shown = sourceOf(form, source).map(({ text }) => [...new Set(placeholders(text))]);
    const optional = maySayCount.has(form.plural) ? [...free, "count"] : free;
    const wanted = (shown[0] ?? []).filter((value) => shown.every((each) => each.includes(value)));
    const known = new Set([...shown.flat(), ...free]);
    const found = [...new Set(placeholders(form.text))];
    const lost = wanted.some((value) => !found.includes(value) && !optional.includes(value));
    return lost || found.some((value) => !known.has(value))
      ? [{ form, found: { code: "translation-values" as const, values: { key: name, wanted, found } } }]
      : [];
  });
};

/** The forms a translated form is made from: those of its context; all of them where the source does not ask. */
export function sourceOf({ context }: Form, source: Form[]): Form[] {
  const same = source.filter((form) => form.context === context);
  if (same.length > 0) return same;
  const plain = source.filter((form) => form.context === "" || sexes.has(form.context));
  return plain.length > 0 ? plain : source;
}

import type { Guard } from "./sentence.js";
import { sourceOf } from "./values.js";

/** What ends as a sentence does. A label may need more room: "upper leg" is "la parte alta de la pata". */
const sentence = /[.?!:]\**$/;
const most = 2;
/** Short enough to be read at a glance, whatever the source. */
const short = 40;

/** No sentence is over twice as long as its source without a reason in guard.json: an owner reads it tired. */
export const checkLength: Guard = ({ name, source, own }, { longer }) =>
  own.flatMap((form) => {
    const lengths = sourceOf(form, source)
      .filter(({ text }) => sentence.test(text))
      .map(({ text }) => text.length);
    return lengths.length > 0 &&
      longer[name] === undefined &&
      form.text.length > Math.max(short, most * Math.max(...lengths))
      ? [{ form, found: { code: "translation-long" as const, values: { key: name } } }]
      : [];
  });

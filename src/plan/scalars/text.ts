import { z } from "zod";
import { scalar } from "./scalar.js";

/** Longest piece of free text; longer ones belong in the record, not on the owner's paper. */
export const longest = 2000;

/** A few words on one line. */
export const words = z.string().min(1).max(200);

/** A language tag in its canonical form, "es", "pt-BR". */
export const language = scalar(
  { title: "Language", description: "A language tag (BCP 47)", examples: ["en", "es", "pt-BR"] },
  (text) => {
    try {
      return Intl.getCanonicalLocales(text)[0] ?? text;
    } catch {
      return { fault: "language-unknown", values: { given: text } };
    }
  },
);

/** One language, or several in the order a person reads them: the first that there are words in is used. */
export const languages = z
  .union([language, z.array(language).min(1).max(6)])
  .transform((given): string[] => [given].flat())
  .describe("The language the owner reads: es; or several, the best first: [so, ar]");

/** Free text: plain in the clinic's staff language, or once for each language, {en: ..., es: ...}. */
export const told = z.union([z.string().min(1).max(longest), z.record(language, z.string().min(1).max(longest))]);

/** A phone number with its country code, as "+15550142". */
export const phone = scalar(
  { title: "Phone", description: "With + and the country code", examples: ["+1 312 555 0142"] },
  (text) => {
    const digits = text.replace(/[\s().-]/g, "");
    // ITU-T E.164: at most 15 digits after the plus (read in two encyclopedias).
    return /^\+[1-9]\d{6,14}$/.test(digits) ? digits : { fault: "phone-unreadable", values: { given: text } };
  },
);

/** An e-mail address. */
export const email = scalar({ title: "E-mail", description: "One address", examples: ["ama@example.org"] }, (text) =>
  /^[^\s@<>,;:"()[\]\\]+@[^\s@<>,;:"()[\]\\]+\.[^\s@<>,;:"()[\]\\.]+$/u.test(text) && text.length <= 254
    ? text
    : { fault: "email-unreadable", values: { given: text } },
);

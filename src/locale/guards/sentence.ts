import type { Messages } from "../locales.js";
import type { Rules } from "./rules.js";

/** One message as its file keeps it. path: where in the file; context and plural: what its key asks for, "" for none. */
export type Form = { path: string[]; context: string; plural: string; text: string };

/** A sentence: the forms of one key (plurals, contexts) in the source and in a translation. name: "handout:ring.title". */
export type Sentence = { name: string; file: string; source: Form[]; own: Form[] };

/** What a guard found: the form it is about, or null where there is none, and what to tell. */
export type Finding = { form: Form | null; found: Found };
export type Found =
  | { code: "translation-missing" | "translation-extra"; values: { key: string } }
  | {
      code: "translation-plurals" | "translation-contexts" | "translation-values" | "translation-figures";
      values: { key: string; wanted: string[]; found: string[] };
    }
  | { code: "translation-markup"; values: { key: string; wanted: number; found: number } }
  | { code: "translation-untranslated"; values: { key: string; words: string[] } }
  | { code: "translation-long"; values: { key: string } };

/** One rule: looks at a sentence that is there in both languages. */
export type Guard = (sentence: Sentence, rules: Rules) => Finding[];

const plurals = new Set(["zero", "one", "two", "few", "many", "other"]);
/** The forms a page asks for wherever a sentence tells of the animal. */
export const sexes: ReadonlySet<string> = new Set(["female", "male"]);

/** The forms of a file by sentence: i18next's key_context_plural. */
export function formsOf(messages: Messages, path: string[] = []): Map<string, Form[]> {
  const found = new Map<string, Form[]>();
  for (const [key, message] of Object.entries(messages)) {
    const here = [...path, key];
    if (typeof message === "string") {
      const [stem = "", ...suffixes] = key.split("_");
      const plural = plurals.has(suffixes.at(-1) ?? "") ? (suffixes.pop() ?? "") : "";
      const name = [...path, stem].join(".");
      const form = { path: here, context: suffixes.join("_"), plural, text: message };
      found.set(name, [...(found.get(name) ?? []), form]);
    } else for (const [name, forms] of formsOf(message, here)) found.set(name, forms);
  }
  return found;
}

import { placeholders } from "../words.js";
import { type Form, type Guard, type Sentence, sexes } from "./sentence.js";

/**
 * A sentence that counts has every plural its language has, and no other (CLDR, by Intl.PluralRules). Only what counts can
 * have plurals: in the source it has them, or shows a count, or is a unit, which always follows a number.
 */
export const checkPlurals: Guard = ({ name, file, source, own }, { plurals }) => {
  const counts = source.some(({ plural, text }) => plural !== "" || placeholders(text).includes("count"));
  const mayCount = counts || file.endsWith("/units.json");
  const mustCount = source.some(({ plural }) => plural !== "");
  return [...new Set(own.map(({ context }) => context))].flatMap((context) => {
    const forms = own.filter((form) => form.context === context);
    const found = forms.map(({ plural }) => plural).filter((plural) => plural !== "");
    const wanted = mustCount || (mayCount && found.length > 0) ? plurals : [];
    const mixed = found.length > 0 && forms.length > found.length;
    const same = !mixed && found.length === wanted.length && wanted.every((plural) => found.includes(plural));
    return same
      ? []
      : [{ form: forms[0] ?? null, found: { code: "translation-plurals", values: { key: name, wanted, found } } }];
  });
};

/**
 * The contexts of the source, each of them and no other. The animal's sex is a language's own affair: it has both or
 * neither, or a form for when it is not asked.
 */
export const checkContexts: Guard = ({ name, source, own }: Sentence) => {
  const asked = (forms: Form[]) => [...new Set(forms.map(({ context }) => context))];
  const [wanted, found] = [source, own].map((forms) => asked(forms).filter((context) => !sexes.has(context)));
  const bySex = asked(own).filter((context) => sexes.has(context));
  const whole = bySex.length === 0 ? own.length > 0 : bySex.length === sexes.size || found?.includes("");
  const contexts = (list: string[] = []) => list.filter((context) => context !== "" || bySex.length === 0);
  const plain = (list: string[] = []) => list.filter((context) => context !== "");
  const same = plain(wanted).sort().join() === plain(found).sort().join();
  const baseKept = bySex.length > 0 || !wanted?.includes("") || found?.includes("");
  if (same && whole && baseKept) return [];
  const values = { key: name, wanted: contexts(wanted), found: asked(own) };
  return [{ form: own[0] ?? null, found: { code: "translation-contexts", values } }];
};

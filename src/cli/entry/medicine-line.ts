import { addDays, formatISO, parseISO } from "date-fns";
import { daysSaid, phraseAt } from "./medicine-phrases.js";
import { type Found, inOrder, type Said, saidFields, wordsUntil } from "./said-fields.js";

const forms = ["tablet", "capsule", "liquid", "drops", "ointment", "spray", "patch", "insulin"];
/** In the order a plan has them. */
export const medicineFields = [
  "name",
  ...forms,
  "splits",
  "syringe",
  "route",
  "dose",
  "give",
  "every",
  "as needed",
  "for",
  "until",
  "dispense",
  "container",
  "once opened",
  "last given",
  "first",
  "food",
  "why",
  "expires",
];

/**
 * "carprofen 100 mg tablet, 4.4 mg/kg q24h for 4 days with food", or with its fields named, "carprofen, tablet 100 mg, dose 4.4
 * mg/kg, every 24 h, for 4 days". discharged: "2026-03-02 16:30"; without it "tomorrow 20:00" stays as it was said.
 */
export function medicineLine(line: string, discharged = ""): Said {
  const fields = medicineFields.slice(1);
  const said = saidFields(line, fields, (rest, before) => (before["name"] ? phraseAt(rest) : nameAt(rest, fields)));
  const timed = ["last given", "first"].flatMap((field) => {
    const time = said.fields[field];
    return time === undefined ? [] : [[field, dated(time, discharged.slice(0, 10))]];
  });
  return { ...said, fields: inOrder({ ...said.fields, ...Object.fromEntries(timed) }, medicineFields) };
}

/** "tomorrow 20:00" as a day and a time, counted from the day given. */
function dated(time: string, day: string): string {
  const [said = "", clock] = time.split(" ");
  const after = daysSaid[said];
  return after === undefined || day === ""
    ? time
    : `${formatISO(addDays(parseISO(day), after), { representation: "date" })} ${clock}`;
}

/** The name goes on to the first word that begins something else: a phrase, a number, or a field with its number. */
function nameAt(rest: string, fields: readonly string[]): Found {
  // "NPH insulin" is a name.
  const field = new RegExp(`^(?:${fields.filter((one) => one !== "insulin").join("|")}):?\\s+[\\d…]`, "i");
  const isOver = (words: string) =>
    (phraseAt(words) !== null && !/^insulin/i.test(words)) || field.test(words) || /^[\d…#]/.test(words);
  const name = wordsUntil(rest, isOver);
  return { fields: { name }, length: name.length };
}

/** Somebody has ordered how much of it to give. Nothing else may: what is not ordered is left for the clinician. */
export const isOrdered = ({ fields }: Said): boolean => fields["dose"] !== undefined || fields["give"] !== undefined;

/** The fields that a medicine without an order still needs, for the clinician to fill in. */
export function leftToFill({ fields }: Said): Record<string, string> {
  const form = forms.find((form) => fields[form] !== undefined) ?? "tablet";
  const empty = Object.fromEntries([form, "dose", "every", "for", "last given"].map((field) => [field, ""]));
  return inOrder({ ...empty, ...fields }, medicineFields);
}

import { inOrder, type Said, saidFields } from "./said-fields.js";

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

/** "carprofen, tablet 100 mg, dose 4.4 mg/kg, every 24 h, for 4 days, last given 09:00, with food" */
export function medicineLine(line: string): Said {
  const said = saidFields(line, medicineFields.slice(1), (part, before) => {
    if (before["name"] === undefined) return { name: part };
    if (/^not given( yet)?$/i.test(part)) return { "last given": "not given" };
    const food = /^(with|without)( or without)? food$/i.exec(part);
    return food?.[1] ? { food: food[2] ? "either" : food[1].toLowerCase() } : null;
  });
  return { ...said, fields: inOrder(said.fields, medicineFields) };
}

/** Somebody has ordered how much of it to give. Nothing else may: what is not ordered is left for the clinician. */
export const isOrdered = ({ fields }: Said): boolean => fields["dose"] !== undefined || fields["give"] !== undefined;

/** The fields that a medicine without an order still needs, for the clinician to fill in. */
export function leftToFill({ fields }: Said): Record<string, string> {
  const form = forms.find((form) => fields[form] !== undefined) ?? "tablet";
  const empty = Object.fromEntries([form, "dose", "every", "for", "last given"].map((field) => [field, ""]));
  return inOrder({ ...empty, ...fields }, medicineFields);
}

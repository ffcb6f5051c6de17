import type { Medicine } from "#compute/facts.js";
import { Fragment } from "./holes.js";
import { type Page, plainOn, sayOn, textOn } from "./page.js";

/** What an owner calls a medicine: its name in their language where there is one, else as the clinician wrote it. */
export const ownNameOn = (page: Page, { name, called }: Medicine): string =>
  called === null ? page.voice.capital(name) : plainOn(page, `medicines:name.${called}`);

/** The same, and in brackets what stands on the label where that differs: "Carprofeno (carprofen)". */
export function medicineNameOn(page: Page, medicine: Medicine): Fragment {
  const own = ownNameOn(page, medicine);
  const fragment = new Fragment(String(textOn(page, own)));
  if (simple(own) === simple(medicine.name)) return fragment;
  return sayOn(page, "handout:medicines.name-label", { own: fragment, label: medicine.name });
}

/** Its name and, of what goes into an eye or an ear, which: "Ofloxacin (left eye)". For places that do not say how it is given. */
export const placedNameOn = (page: Page, medicine: Medicine): string =>
  ownNameOn(page, medicine) + sideOn(page, medicine);

/** Its name, what stands on the label in brackets, and into which eye or ear: "Ofloxacin (left eye)". */
export const placedMedicineOn = (page: Page, medicine: Medicine): Fragment =>
  new Fragment(`${medicineNameOn(page, medicine).markdown}${textOn(page, sideOn(page, medicine)).markdown}`);

/** " (left eye)"; nothing where no side is said. */
const sideOn = (page: Page, { route }: Medicine): string =>
  sided.test(route) ? ` (${plainOn(page, `handout:medicines.where.${route}`)})` : "";

const sided = /^(?:left|right|both) /;

/** Letters and digits alone: a hyphen, a space or a capital makes no other name. */
const simple = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");

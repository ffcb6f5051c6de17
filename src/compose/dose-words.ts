import type { Dose, Medicine } from "#compute/facts.js";
import { Fragment } from "./holes.js";
import { medicineNameOn, sideOn } from "./medicine-name.js";
import { amountOn, type Page, textOn } from "./page.js";
import { wordsAloneOn } from "./words-alone.js";

/** What to give at one time as words alone, by the name the page gives the medicine: "Carprofeno (carprofen): 1 tableta, con comida" */
export const doseWords = (page: Page, medicine: Medicine, { give }: Dose): string =>
  wordsAloneOn(page, `screen:dose.${medicine.food ?? "either"}`, {
    medicine: new Fragment(
      `${medicineNameOn(page, medicine).markdown}${textOn(page, sideOn(page, medicine)).markdown}`,
    ),
    dose: amountOn(page, give),
  });

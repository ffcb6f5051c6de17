import type { Dose, Medicine } from "#compute/facts.js";
import { placedMedicineOn } from "./medicine-name.js";
import { amountOn, type Page } from "./page.js";
import { wordsAloneOn } from "./words-alone.js";

/** What to give at one time as words alone, by the name the page gives the medicine: "Carprofeno (carprofen): 1 tableta, con comida" */
export const doseWords = (page: Page, medicine: Medicine, { give }: Dose): string =>
  wordsAloneOn(page, `screen:dose.${medicine.food ?? "either"}`, {
    medicine: placedMedicineOn(page, medicine),
    dose: amountOn(page, give),
  });

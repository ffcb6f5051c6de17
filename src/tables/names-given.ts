import type { Animal } from "./animals.js";
import type { Medicines } from "./medicines.js";

/** Animals with the names of every medicine of the group that is given to them. */
export const withNamesGiven = (animals: readonly Animal[], { rows }: Medicines): Animal[] =>
  animals.map((animal) => {
    const given = rows.filter(({ groups }) => groups.some(({ id }) => id === animal.given));
    return given.length > 0 ? { ...animal, takes: given.flatMap(({ names }) => names) } : animal;
  });

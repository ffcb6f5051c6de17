import type { Amount, Medicine } from "../facts.js";
import { keyOf } from "./key.js";
import { exact } from "./money.js";
import type { Item } from "./read-item.js";

/**
 * The medicines a row charged by the unit is for: its item is their name, or begins with it. Where the item goes on with a
 * strength, it is for that strength alone: a tablet of 25 mg does not cost what one of 100 mg does.
 */
export const dispensedFor = ({ price }: Item, medicines: readonly Medicine[]): Medicine[] =>
  medicines.filter(({ id, name, strength }) =>
    [id, name].some((known) => {
      const [item, start] = [`${keyOf(price.item)} `, `${keyOf(known)} `];
      return item.startsWith(start) && hasStrength(item.slice(start.length), strength);
    }),
  );

/** How many units are dispensed, in exact decimals. */
export const dispensed = (item: Item, medicines: readonly Medicine[]) =>
  dispensedFor(item, medicines).reduce((all, { dispense }) => all.plus(dispense.value), exact(0));

/** "375 mg", "62.5 mg/mL", "40 IU/mL" */
const written = /(?<value>\d+(?:\.\d+)?) ?(?<unit>(?:mcg|µg|mg|g|iu|units?|%)(?:\/ml)?)(?![\p{L}\d])/u;

function hasStrength(words: string, strength: Amount | null): boolean {
  const { value, unit } = written.exec(words)?.groups ?? {};
  if (value === undefined || unit === undefined || strength === null) return true;
  return exact(value).eq(strength.value) && plain(unit) === plain(strength.unit);
}

const plain = (unit: string): string =>
  unit
    .toLowerCase()
    .replace("µg", "mcg")
    .replace(/^units?/, "iu");

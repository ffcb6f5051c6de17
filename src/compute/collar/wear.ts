import type { Place } from "#problems/place.js";
import type { CareTables } from "#tables/topics.js";
import type { Amount, Statement } from "../facts.js";

/** How to wear the collar, in the order of the table; numbers that depend on the animal take the place of the table's. */
export const howToWear = (
  ids: readonly string[],
  margin: Amount | null,
  tables: CareTables,
  from: Place,
): Statement[] =>
  tables.statements.collar
    .filter(({ id }) => ids.includes(id))
    .map(({ id, about, values }) => ({
      id: `collar.${id}`,
      topics: [],
      ...(about === undefined ? {} : { about }),
      values: values["margin"] && margin ? { ...values, margin } : values,
      from,
    }));

import type { MedicineRow } from "#tables/medicines.js";
import type { Statement } from "../facts.js";
import type { Asked } from "./asked.js";
import { told } from "./exact.js";
import type { Form } from "./made-up.js";

/** What the owner is told of it: what the table says of this form and species. The clinician's own words go before ours. */
export function statementsOf(asked: Asked, form: Form, said: MedicineRow["statements"]): Statement[] {
  const { planned, species, sex } = asked;
  return said
    .filter(({ forms }) => forms?.includes(form.kind) ?? true)
    .filter(({ species: of }) => of?.includes(species) ?? true)
    .filter(({ sexes }) => sexes?.includes(sex) ?? true)
    .filter(({ id }) => id !== "all.missed-dose" || planned.missed === undefined)
    .map(({ id }) => ({ id, topics: [asked.id], values: valuesOf(asked, id), from: asked.at() }));
}

function valuesOf({ planned: { syringe } }: Asked, id: string): Statement["values"] {
  if (id !== "insulin.syringe" || syringe === undefined) return {};
  return { syringe: typeof syringe === "string" ? syringe : told(syringe) };
}

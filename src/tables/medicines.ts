import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { readTable } from "./json.js";
import { slug, source } from "./row.js";

const decimal = z.string().regex(/^\d+(\.\d+)?$/);
const species = z.enum(["dog", "cat"]);
const sex = z.enum(["female", "male", "spayed female", "neutered male"]);
const form = z.enum(["tablet", "capsule", "liquid", "drops", "ointment", "spray", "patch", "insulin"]);
const route = z.enum(["mouth", "ear", "eye", "skin", "under the skin"]);
/** What a clinician may write, in lower case and without accents: "co-amoxiclav" is found as "co amoxiclav". */
const name = z.string().regex(/^[a-z0-9]+( [a-z0-9]+)*$/);
const weight = z.strictObject({ value: decimal, unit: z.enum(["kg", "lb"]) });

/** What must not be given with it: a group or a medicine, also for so many days after the other one ended. */
const notWith = z.strictObject({ id: slug, days: z.int().min(1).nullable(), source });

/**
 * What owners are told of it; the words are medicines:<id>. Only for these forms, species and sexes; for any when absent.
 * label: how it is kept and handled, which its container says too. needless: statements that an owner told this must not be
 * told beside it, of whatever medicine of the plan: stools that are common with one are a sign to stop another.
 */
const statement = z.strictObject({
  id: z.string().regex(/^[a-z-]+[.][a-z-]+$/),
  forms: z.array(form).optional(),
  species: z.array(species).optional(),
  sexes: z.array(sex).optional(),
  label: z.literal(true).optional(),
  needless: z.array(z.string()).default([]),
  source,
});

/** Something that medicines have in common: an allergy to one holds for all. */
const group = z.strictObject({
  id: slug,
  names: z.array(name).min(1),
  notWith: z.array(notWith).default([]),
  statements: z.array(statement).default([]),
  source,
});

/**
 * One way a medicine is given, and how far it may go. Published: a regulation or label says so, and beyond it the clinician
 * is asked. Usual: no label covers it, which is asked anyway; the range is there to catch a slip of the pen.
 */
const regimen = z.strictObject({
  standing: z.enum(["published", "usual"]),
  species: z.array(species).min(1),
  route: z.array(route).min(1),
  /** Only for these forms; any when absent. */
  forms: z.array(form).optional(),
  /** Only of these strengths, as they stand on the box; any when absent. */
  strengths: z.array(decimal).optional(),
  /** A lowest or highest that nobody published is null; ceiling then says where asking begins. */
  dose: z.strictObject({
    least: decimal.nullable(),
    most: decimal.nullable(),
    unit: z.enum(["mg/kg", "mg/lb", "mg", "IU/kg"]),
    per: z.enum(["dose", "day"]),
  }),
  ceiling: z.strictObject({ most: decimal, source }).optional(),
  /** Hours between doses, at least and at most; null where it is given once, or as the source leaves open. */
  every: z.strictObject({ least: z.int(), most: z.int() }).nullable(),
  days: z.strictObject({ least: z.int().nullable(), most: z.int().nullable() }).nullable(),
  /** Most doses in all, and whether a dose at the clinic is one of them. */
  doses: z.strictObject({ most: z.int(), clinicCounts: z.boolean() }).optional(),
  weight: z.strictObject({ least: weight.nullable(), most: weight.nullable() }).optional(),
  months: z.strictObject({ least: z.int().nullable(), most: z.int().nullable() }).optional(),
  /** What it was published for, where that is narrow: "osteoarthritis". */
  use: z.string().optional(),
  source,
});

/** What a country's law wants on the label of a medicine that goes home, of what a plan may leave out. */
const label = z.strictObject({
  country: z.string().regex(/^[A-Z]{2}$/),
  needs: z.array(z.enum(["clinician", "ingredient", "owner-address", "expiry"])).min(1),
  source,
});

const medicine = z.strictObject({
  id: slug,
  names: z.array(name).min(1),
  groups: z.array(slug).default([]),
  /** Species that must never have it. */
  never: z.array(z.strictObject({ species, source })).default([]),
  /** Forms that may be made with another medicine of the table: a liquid sweetened for people. */
  mayHold: z.array(z.strictObject({ id: slug, forms: z.array(form).min(1), source })).default([]),
  regimens: z.array(regimen).default([]),
  /** Strengths it is sold in; another one is asked about. */
  strengths: z
    .array(
      z.strictObject({
        form: z.enum(["tablet", "capsule", "liquid", "insulin"]),
        unit: z.string(),
        values: z.array(decimal).min(1),
      }),
    )
    .default([]),
  strengthsSource: source.optional(),
  food: z.strictObject({ how: z.enum(["with", "without", "either"]), source }).optional(),
  notWith: z.array(notWith).default([]),
  statements: z.array(statement).default([]),
  source,
});

const repeated = (all: string[]) => all.filter((one, i) => all.indexOf(one) !== i);

const file = z
  .strictObject({
    /** Said of every medicine that goes home. */
    statements: z.array(statement),
    labels: z.array(label),
    groups: z.array(group),
    medicines: z.array(medicine),
  })
  .superRefine(({ statements, groups, medicines }, context) => {
    const complain = (message: string) => context.addIssue({ code: "custom", message });
    const rows = [...groups, ...medicines];
    const ids = rows.map(({ id }) => id);
    for (const twice of [...repeated(ids), ...repeated(rows.flatMap(({ names }) => names))])
      complain(`"${twice}" stands here twice`);
    const named = [
      ...medicines.flatMap((row) => row.groups),
      ...rows.flatMap((row) => row.notWith.map(({ id }) => id)),
      ...medicines.flatMap((row) => row.mayHold.map(({ id }) => id)),
    ];
    for (const stray of named.filter((id) => !ids.includes(id))) complain(`there is no "${stray}"`);
    const said = [...statements, ...rows.flatMap((row) => row.statements)];
    const sayable = new Set(said.map(({ id }) => id));
    for (const stray of said.flatMap(({ needless }) => needless).filter((id) => !sayable.has(id)))
      complain(`there is no statement "${stray}"`);
  });

export type Regimen = z.output<typeof regimen>;
type MedicineGroup = Pick<z.output<typeof group>, "id" | "names">;
/** A medicine with what its groups add to it; groups[0] is the one it is worded by. */
export type MedicineRow = Omit<z.output<typeof medicine>, "groups"> & { groups: MedicineGroup[] };

/** All that is known of medicines; common: what is said of every one, known by name or not. */
export type Medicines = { rows: MedicineRow[]; common: MedicineRow["statements"]; labels: LabelRule[] };
export type LabelRule = z.output<typeof label>;

/** Reads shared/medicines.json. Problems: "table-not-json", "table-row-wrong". */
export function readMedicines(text: string, path: string): Outcome<Medicines> {
  const { value, problems } = readTable(file, text, path);
  if (!value) return { value: null, problems };
  const rows = value.medicines.map((row) => {
    const groups = value.groups.filter(({ id }) => row.groups.includes(id));
    const inOrder = row.groups.flatMap((id) => groups.filter((group) => group.id === id));
    return {
      ...row,
      groups: inOrder.map(({ id, names }) => ({ id, names })),
      notWith: [...row.notWith, ...inOrder.flatMap((group) => group.notWith)],
      statements: [...inOrder.flatMap((group) => group.statements), ...row.statements, ...value.statements],
    };
  });
  return { value: { rows, common: value.statements, labels: value.labels }, problems };
}

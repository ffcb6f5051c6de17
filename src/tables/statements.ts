import { z } from "zod";
import type { Outcome } from "#problems/problem.js";
import { readTable } from "./json.js";
import { amount, slug, source } from "./row.js";
import { together } from "./together.js";

/** A statement without its words: the numbers that stand in them, and who says so. */
const statement = z.strictObject({
  id: slug,
  /** What of the case it is about, a heading where a list is long: "bandage". */
  about: slug.optional(),
  values: z.record(z.string(), z.union([amount, z.string()])).default({}),
  source,
});

const part = z.enum(["morning", "midday", "evening", "bedtime", "any"]);
/** How soon a sign asks for something, the gravest first. */
export const urgencies = ["now", "today", "visit"] as const;
const urgency = z.enum(urgencies);

/** The gravest of what is said of one sign; unsaid, it is the gravest there is. */
export const gravest = (said: readonly (typeof urgencies)[number][]): (typeof urgencies)[number] =>
  urgencies.find((one) => said.includes(one)) ?? "now";

const rows = <T extends z.ZodType<{ id: string }>>(row: T) =>
  z.array(row).superRefine((all, context) => {
    const ids = all.map(({ id }) => id);
    for (const id of ids.filter((id, i) => ids.indexOf(id) !== i))
      context.addIssue({ code: "custom", message: `"${id}" stands here twice` });
  });

const plain = rows(statement);
const steps = rows(statement.extend({ times: z.array(part).min(1) }));
const signs = rows(statement.extend({ urgency }));

export type StatementRow = z.output<typeof statement>;

/** The lists a statement can stand in. Its id is "<list>.<row>", which is also the key of its words. */
export type Statements = {
  done: StatementRow[];
  steps: z.output<typeof steps>;
  normal: StatementRow[];
  signs: z.output<typeof signs>;
  avoid: StatementRow[];
  supplies: StatementRow[];
  ends: StatementRow[];
  collar: StatementRow[];
};

export type List = keyof Statements;

/** Reads shared/statements/, a file a list. The order of a file is the order on the page: of signs, the gravest first. */
export function readStatements(files: Record<string, string>): Outcome<Statements> {
  const table = <T extends z.ZodType>(list: List, schema: T) => {
    const path = `shared/statements/${list}.json`;
    return readTable(schema, files[path] ?? "", path);
  };
  return together({
    done: table("done", plain),
    steps: table("steps", steps),
    normal: table("normal", plain),
    signs: table("signs", signs),
    avoid: table("avoid", plain),
    supplies: table("supplies", plain),
    ends: table("ends", plain),
    collar: table("collar", plain),
  });
}

const ids = z.array(slug).default([]);
const sign = z.union([slug.transform((id) => ({ id, urgency: null })), z.strictObject({ id: slug, urgency })]);

/** What a topic, a bandage or an addition says, as rows of the lists. A sign may be graver here than elsewhere. */
export const says = z.strictObject({
  done: ids,
  steps: ids,
  normal: ids,
  signs: z.array(sign).default([]),
  avoid: ids,
  supplies: ids,
  /** When the care is over. */
  ends: ids,
});

export type Says = z.output<typeof says>;

/** The lists of what is said, each a list of rows. */
export const spoken = ["done", "steps", "normal", "signs", "avoid", "supplies", "ends"] as const;

/** The ids of everything that is said: "steps.warm-compress". */
export function idsOf(said: Says): string[] {
  const ids =
    known.get(said) ??
    spoken.flatMap((list) => said[list].map((entry) => `${list}.${typeof entry === "string" ? entry : entry.id}`));
  known.set(said, ids);
  return ids;
}
/** Each rule of each plan asks for them. */
const known = new WeakMap<Says, string[]>();

import { z } from "zod";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const instant = z.iso.datetime();

/** A text that a paper was made from. file: its name in the places of problems; from: where it lay, seen from the case folder. */
const source = z.strictObject({ file: z.string(), from: z.string().nullable(), sha256 });
/** A plan with the clinic profile and the price list it names; null where they are written in it. logo: the clinic's, if it has one. */
const sources = z.strictObject({
  plan: source,
  clinic: source.nullable(),
  prices: source.nullable(),
  logo: source.optional(),
});

/** How a package was asked for. */
const asked = z.strictObject({
  languages: z.array(z.string()),
  formats: z.array(z.string()),
  paper: z.enum(["letter", "a4"]).nullable(),
  only: z.enum(["estimate", "first-page"]).nullable(),
  large: z.boolean(),
  staffToo: z.boolean(),
  proof: z.boolean(),
  allow: z.array(z.strictObject({ problem: z.string(), for: z.string().optional(), reason: z.string() })),
});

/** What a package was made with: versions by name, hashes of what ships by name ("templates", "locales/es", "tables"). */
const made = z.strictObject({ versions: z.record(z.string(), z.string()), shipped: z.record(z.string(), sha256) });

const files = z.array(z.strictObject({ name: z.string(), sha256 }));
const common = { at: instant, on: day, case: z.string(), revision: z.int().min(0) };

/** One thing that happened in a case. at: when it was written down; on: the day it was done, on the machine's or a given clock. */
const entry = z.discriminatedUnion("what", [
  z.strictObject({
    what: z.literal("built"),
    ...common,
    /** When the paper says it was handed out, on the clinic's clock. */
    paper: z.string(),
    sources,
    /** The revisions before it, the oldest first. */
    earlier: z.array(sources),
    /** The clinic's own reviews of languages, if it has any. */
    reviews: source.nullable(),
    /** The clinic's own templates and texts, if it has any, each by the name of ours it stands for. */
    overrides: z.array(source.extend({ name: z.string() })).optional(),
    asked,
    made,
    /** Hash of the facts, as JSON. */
    facts: sha256,
    languages: z.array(
      z.strictObject({ language: z.string(), review: z.enum(["original", "reviewed", "not reviewed"]) }),
    ),
    /** The problems and the reasons given stand in record.json, which is one of the files. */
    files,
    /** What was made beside them and stays at the clinic: a proof. */
    forStaff: files.optional(),
  }),
  z.strictObject({ what: z.literal("visited"), ...common, plan: sha256 }),
  z.strictObject({ what: z.literal("sent"), ...common, to: z.string(), language: z.string(), letter: sha256 }),
]);

export const entrySchema = entry;
export type Entry = z.output<typeof entry>;
export type Built = Extract<Entry, { what: "built" }>;
export type Sources = z.output<typeof sources>;
export type SourceKept = z.output<typeof source>;
export type Asked = z.output<typeof asked>;
export type Made = z.output<typeof made>;

import { isDeepStrictEqual } from "node:util";
import {
  type ClinicReview,
  compose,
  compute,
  type Facts,
  type House,
  type Outcome,
  type OutputFile,
  proof,
  type RenderOptions,
  render,
} from "#index.js";
import type { Case } from "./case.js";
import { follow } from "./follow.js";

/** The files of one plan in one language. asked: as the user or the plan says it; language: the words they are in; forStaff: proofs. */
export type Drawn = { asked: string; language: string; files: OutputFile[]; forStaff: OutputFile[] };

/** The paper is the clinic's own unless another is asked for; the language is the owner's unless some are. */
export type Wanted = Omit<RenderOptions, "paper"> & {
  paper: RenderOptions["paper"] | undefined;
  languages: string[];
  proof: boolean | undefined;
  staffToo: boolean | undefined;
  reviews: readonly ClinicReview[];
};

/** Draws a plan in every language wanted. A problem that several of them meet is told once. */
export async function draw(
  { plan, earlier }: Pick<Case, "plan" | "earlier">,
  house: House,
  wanted: Wanted,
): Promise<Outcome<{ facts: Facts; drawn: Drawn[] }>> {
  const facts = await follow(plan, (plan) => compute(plan, house, earlier));
  const paper = wanted.paper ?? plan.value?.clinic.paper ?? "letter";
  const { value, problems } = await follow(facts, async (facts) => {
    const languages = wanted.languages.length > 0 ? wanted.languages : [facts.owner.languages];
    const drawn = await Promise.all(languages.map((asked) => drawOne(facts, house, asked, { ...wanted, paper })));
    const done = drawn.flatMap(({ value }) => value ?? []);
    return {
      value: done.length === languages.length ? { facts, drawn: done } : null,
      problems: drawn.flatMap(({ problems }) => problems),
    };
  });
  return { value, problems: problems.filter((one, i) => problems.findIndex((o) => isDeepStrictEqual(o, one)) === i) };
}

async function drawOne(
  facts: Facts,
  house: House,
  asked: string | readonly string[],
  options: Wanted & RenderOptions,
): Promise<Outcome<Drawn>> {
  const { reviews, staffToo } = options;
  const document = options.document === "proof" ? undefined : options.document;
  const handout = compose(facts, house, { language: asked, document, reviews, staffToo });
  const files = await follow(handout, (handout) => render(handout, house, options));
  const [first = "en"] = [asked].flat();
  const language = handout.value?.language ?? first;
  const proofs = options.proof && files.value ? await drawProof(facts, house, asked, options) : nothing;
  const problems = [...files.problems, ...proofs.problems];
  return {
    value: files.value && proofs.value && { asked: first, language, files: files.value, forStaff: proofs.value },
    problems,
  };
}

const nothing: Outcome<OutputFile[]> = { value: [], problems: [] };

/** No proof where the owner reads what the staff read: a note says so, and nothing stops. */
async function drawProof(
  facts: Facts,
  house: House,
  asked: string | readonly string[],
  options: Wanted & RenderOptions,
): Promise<Outcome<OutputFile[]>> {
  const { value, problems } = proof(facts, house, { language: asked, reviews: options.reviews });
  if (!value) return { value: problems.some(({ severity }) => severity === "stop") ? null : [], problems };
  return render(value, house, { ...options, document: "proof", formats: ["pdf", "html"] });
}

import {
  formats,
  type House,
  type Logo,
  type Outcome,
  openLogo,
  override,
  type Plan,
  type Problem,
  readClinicReviews,
  readPlan,
  type Source,
  settle,
} from "#index.js";
import { sha256 } from "#io/sha256.js";
import { logoEngine } from "#io/shipped.js";
import type { Built, SourceKept, Sources } from "#journal/entry.js";
import type { Text } from "./case.js";
import { draw } from "./draw.js";
import { follow } from "./follow.js";
import { packageOf } from "./package.js";

/** The files of a paper, built again from the texts kept with it. bytesOf: a kept text's bytes. */
export async function rebuild(
  ours: House,
  { sources, earlier, reviews, overrides = [], asked, on }: Built,
  bytesOf: (source: SourceKept) => Uint8Array | undefined,
): Promise<Outcome<{ name: string; sha256: string }[]>> {
  const textsOf = (of: Sources): Text[] =>
    (["plan", "clinic", "prices", "logo"] as const).flatMap((is) => {
      const source = of[is];
      const bytes = source && bytesOf(source);
      return source && bytes ? [{ is, file: source.file, bytes, firstLine: 1 }] : [];
    });
  const read = (of: Sources): Outcome<Plan> => {
    const texts = textsOf(of);
    const text = (is: Text["is"]): Source | undefined => texts.find((one) => one.is === is);
    const plan = text("plan") ?? { file: "", bytes: new Uint8Array() };
    return readPlan({ plan, clinic: text("clinic"), prices: text("prices") }, { today: on });
  };
  const own = overrides.flatMap((source) => {
    const bytes = bytesOf(source);
    return bytes ? [{ name: source.name, file: source.file, bytes }] : [];
  });
  const laid = override(ours, own);
  if (!laid.value) return { value: null, problems: laid.problems };
  const house = laid.value;
  const plan = withProblems(read(sources), laid.problems);
  const drawnLogo = await logoOf(textsOf(sources));
  const before = earlier.map(read);
  const reviewBytes = reviews && bytesOf(reviews);
  const clinicReviews = (reviewBytes && readClinicReviews(new TextDecoder().decode(reviewBytes))) ?? [];
  const drawn = await draw({ plan, earlier: before.flatMap(({ value }) => value ?? []) }, house, {
    formats: formats.filter((format) => asked.formats.includes(format)),
    large: asked.large,
    languages: asked.languages,
    paper: asked.paper ?? undefined,
    document: asked.only ?? undefined,
    staffToo: asked.staffToo,
    proof: asked.proof,
    reviews: clinicReviews,
    logo: drawnLogo,
  });
  const settled = settle(drawn.problems, [...(plan.value?.allow ?? []), ...asked.allow]);
  if (settled.open.length > 0) return { value: null, problems: settled.open };
  return follow(drawn, async (value) => {
    const made = await packageOf({ ...value, texts: textsOf(sources), reviews: clinicReviews, settled }, house);
    return {
      value: [...made.files, ...made.forStaff].map(({ name, bytes }) => ({ name, sha256: sha256(bytes) })),
      problems: [],
    };
  });
}

const withProblems = <T>({ value, problems }: Outcome<T>, more: readonly Problem[]): Outcome<T> => ({
  value,
  problems: [...problems, ...more],
});

/** The kept logo, drawn again: it was sound when it was kept. */
async function logoOf(texts: readonly Text[]): Promise<Logo | null> {
  const kept = texts.find(({ is }) => is === "logo");
  if (!kept) return null;
  return (await openLogo(kept, { file: kept.file, line: 1, column: 1, length: 1 }, await logoEngine())).value;
}

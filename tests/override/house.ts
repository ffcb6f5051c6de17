import { readFileSync } from "node:fs";
import { compose, type House, type OwnFile, openHouse, override } from "#index.js";
import { shippedFiles } from "#io/shipped.js";
import { placeText } from "#problems/place.js";
import type { Problem } from "#problems/problem.js";
import { cat, dog } from "../compose/fixture.js";

export { cat, dog };

const opened = openHouse(await shippedFiles());
if (!opened.value) throw new Error(JSON.stringify(opened.problems));
export const house: House = opened.value;

export const ours = (name: string): string => readFileSync(name, "utf8");
export type Own = { name: string; text: string; file?: string };
export const lay = (...files: Own[]) => layOver(house, ...files);
export const layOver = (under: House, ...files: Own[]) => override(under, files.map(asFile));
const asFile = ({ text, ...rest }: Own): OwnFile => ({ ...rest, bytes: new TextEncoder().encode(text) });
/** Every problem as "code line:column". */
export const told = (problems: readonly Problem[]): string[] =>
  problems.map(({ code, at }) => `${code} ${placeText(at)}`);

/** A house with these laid over it; what is wrong with them fails. */
export function laid(...files: Own[]): House {
  const { value, problems } = lay(...files);
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

/** What comes of the dog's page, or the cat's, with a template of a clinic's own. */
export const pageWith = (files: Own[], options: Partial<Parameters<typeof compose>[2]> = {}, facts = dog) =>
  compose(facts, laid(...files), { language: "en", ...options });

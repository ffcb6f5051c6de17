import { createHash } from "node:crypto";
import { type House, type Outcome, override, type Problem } from "#index.js";
import { type OwnSource, readOverrides } from "#io/read-overrides.js";

/** The house with what a clinic has of its own, null where that cannot be used, and the files it is read from. */
export type ClinicHouse = { house: House | null; own: OwnSource[]; problems: Problem[] };

/** The house of the clinic whose profile lies in a folder: ours, with the templates and texts beside the profile. */
export async function clinicHouse(house: House, folder: string): Promise<ClinicHouse> {
  const { value: own, problems } = await readOverrides(folder);
  if (!own) return { house: null, own: [], problems };
  const laid = layOver(house, own);
  return { house: laid.value, own, problems: laid.problems };
}

/** The plans of a batch are mostly of one clinic: what was laid over a house last is kept. */
const last = new WeakMap<House, { key: string; laid: Outcome<House> }>();

function layOver(house: House, own: readonly OwnSource[]): Outcome<House> {
  if (own.length === 0) return { value: house, problems: [] };
  const hash = createHash("sha256");
  for (const { name, file, bytes } of own) hash.update(JSON.stringify([name, file, bytes.length])).update(bytes);
  const key = hash.digest("hex");
  const before = last.get(house);
  if (before?.key === key) return before.laid;
  const laid = override(house, own);
  last.set(house, { key, laid });
  return laid;
}

/** Kinds of visit after which a bandage is on, and after which it is off. */
const on = ["bandage-change", "splint-change"];
const off = ["bandage-removal", "splint-removal"];

export const isOfBandage = (kinds: readonly string[]): boolean =>
  kinds.some((id) => on.includes(id) || off.includes(id));

/**
 * The line of a plan's care, by index, whose bandage a visit of these kinds took off for good; null where it took off none, put
 * a new one on, or where several are bandaged and nobody knows which it was.
 */
export function bandageOff(care: readonly { bandage?: string | undefined }[], kinds: readonly string[]): number | null {
  if (!kinds.some((id) => off.includes(id)) || kinds.some((id) => on.includes(id))) return null;
  const [only, ...others] = care.flatMap(({ bandage }, i) => (bandage === undefined ? [] : i));
  return only === undefined || others.length > 0 ? null : only;
}

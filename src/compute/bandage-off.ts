const changed = "bandage-change";
const removed = "bandage-removal";

/** Whether a visit of these kinds was for a bandage. */
export const isOfBandage = (kinds: readonly string[]): boolean => kinds.some((id) => id === changed || id === removed);

/**
 * The line of a plan's care, by index, whose bandage a visit of these kinds took off for good; null where it took off none, put
 * a new one on, or where several are bandaged and nobody knows which it was.
 */
export function bandageOff(care: readonly { bandage?: string | undefined }[], kinds: readonly string[]): number | null {
  if (!kinds.includes(removed) || kinds.includes(changed)) return null;
  const [only, ...others] = care.flatMap(({ bandage }, i) => (bandage === undefined ? [] : i));
  return only === undefined || others.length > 0 ? null : only;
}

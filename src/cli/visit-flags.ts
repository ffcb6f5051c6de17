import { medicineLine } from "./entry/medicine-line.js";
import type { ReviseFlags } from "./options.js";

/** What the flags say, as the fields of a visit's file; nothing for those that were not given. */
export function visitOf(flags: ReviseFlags): Record<string, unknown> {
  const { discharge, tissue, smell, bandage, pain, left, medicine, chargedOn, collarUntil } = flags;
  const seen = given({ discharge, tissue, smell, bandage, pain });
  const { at, visit, did, reason, decided, every, course, booked, stop, weight, charged, paid } = flags;
  return given({
    ...{ at, visit, did, reason, decided, every, course, booked, stop, weight, charged, paid },
    seen: Object.keys(seen).length > 0 ? seen : undefined,
    left: left && leftOf(left),
    medicines: medicine?.map(medicineOf),
    "charged on": chargedOn && Object.fromEntries(chargedOn.map(pair)),
    "collar until": collarUntil,
  });
}

const given = (fields: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

/** "carprofen=3 tablets", as a file says it: { carprofen: "3 tablets" }. */
export const leftOf = (said: readonly string[]): Record<string, string> => Object.fromEntries(said.map(pair));

/** "carprofen, give 0.5 tablet" as the fields of a plan; what names no field stands under its own words, to be told as unknown. */
export function medicineOf(line: string): Record<string, string> {
  const { fields, unknown } = medicineLine(line);
  return unknown === null ? fields : { ...fields, [unknown]: "" };
}

function pair(text: string): [string, string] {
  const at = text.lastIndexOf("=");
  return at < 0 ? [text, ""] : [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}

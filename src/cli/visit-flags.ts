import type { ReviseFlags } from "./options.js";

/** What the flags say, as the fields of a visit's file; nothing for those that were not given. */
export function visitOf(flags: ReviseFlags): Record<string, unknown> {
  const { discharge, tissue, smell, bandage, pain, left, chargedOn, collarUntil } = flags;
  const seen = given({ discharge, tissue, smell, bandage, pain });
  const { at, visit, did, decided, every, course, booked, stop, weight, charged, paid } = flags;
  return given({
    ...{ at, visit, did, decided, every, course, booked, stop, weight, charged, paid },
    seen: Object.keys(seen).length > 0 ? seen : undefined,
    left: left && Object.fromEntries(left.map(pair)),
    "charged on": chargedOn && Object.fromEntries(chargedOn.map(pair)),
    "collar until": collarUntil,
  });
}

const given = (fields: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

/** "carprofen=3 tablets" */
function pair(text: string): [string, string] {
  const at = text.lastIndexOf("=");
  return at < 0 ? [text, ""] : [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}

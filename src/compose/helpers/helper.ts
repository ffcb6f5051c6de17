import type { Fragment } from "../holes.js";
import type { Page, Values } from "../page.js";

/**
 * What a template can call. args and hash are what the template wrote; owner is the object its first value was found in,
 * and so tells where that value comes from.
 */
export type Helper = (page: Page, args: readonly unknown[], hash: Values, owner: unknown) => Fragment | boolean;

/** The hash key under which a template's compiler passes the owner; no template can write it. */
export const ownerKey = " owner";

/** A value as it stands; a list or an object is no text, and is never printed as one. */
export function asText(given: unknown): string {
  if (typeof given === "string" || typeof given === "number") return String(given);
  throw new TypeError(`no text: ${typeof given}`);
}

import type { Fragment } from "../holes.js";
import type { Page, Values } from "../page.js";

/**
 * What a template can call. args and hash are what the template wrote; owner is the object its first value was found in,
 * and so tells where that value comes from.
 */
export type Helper = (page: Page, args: readonly unknown[], hash: Values, owner: unknown) => Fragment | boolean;

/** The hash key under which a template's compiler passes the owner; no template can write it. */
export const ownerKey = " owner";

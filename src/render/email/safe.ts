import type { Mailbox } from "#handout/handout.js";

/** What could end a header line, or turn what follows it: a name is shown, and is never a header. */
const unsafe = /[\p{Cc}\p{Zl}\p{Zp}\p{Surrogate}\u202a-\u202e\u2066-\u2069]+/gu;

/**
 * Words for one header line. "=?" begins an encoded word (RFC 2047), which readers decode even inside quotes: what only looks
 * like one is parted by a mark that nobody sees (U+2060).
 */
export const line = (text: string): string => text.replace(unsafe, " ").replaceAll("=?", "=\u2060?").trim();

/** An address is checked where the plan is read; a name may be anything. */
export const address = ({ name, address }: Mailbox): Mailbox => ({ name: line(name), address: line(address) });

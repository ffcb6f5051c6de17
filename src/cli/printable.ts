/** What a terminal would obey rather than show: control characters, and marks that turn the direction of writing. */
const obeyed = /[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;
/** Words kept to themselves turn nothing around them (UAX #9, FSI and PDI): our own sentences have such among Arabic. */
const isolatedOrObeyed = new RegExp(`\\u2068([^\\u2066-\\u2069]*)\\u2069|${obeyed.source}`, "gu");

/** Text from a file or a name, safe to print on one line of a terminal. */
export const printable = (text: string): string =>
  text.replace(isolatedOrObeyed, (_, inner?: string) =>
    inner === undefined ? "\ufffd" : `\u2068${inner.replace(obeyed, "\ufffd")}\u2069`,
  );

/** What a terminal would obey rather than show: control characters, and marks that turn the direction of writing. */
const obeyed = /[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
const plain = "[^\\u2066-\\u2069]*";
/** Words kept to themselves turn nothing around them (UAX #9, LRI or FSI, and PDI): our own sentences have such, and in them a value's. */
const isolate = `([\\u2066\\u2068])(${plain}(?:[\\u2066\\u2068]${plain}\\u2069${plain})*)\\u2069`;
const isolatedOrObeyed = new RegExp(`${isolate}|${obeyed.source}`, "gu");

/** Text from a file or a name, safe to print on one line of a terminal, which keeps no words together: they are to be searched and copied. */
export const printable = (text: string): string =>
  text
    .replaceAll("\u00a0", " ")
    .replace(isolatedOrObeyed, (_, opening?: string, inner = "") =>
      opening === undefined ? "\ufffd" : `${opening}${printable(inner)}\u2069`,
    );

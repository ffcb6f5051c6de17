const rightToLeft = /[\p{Script=Arabic}\p{Script=Hebrew}]/u;
/** What would be drawn into the order of the words around it: letters from left to right, and figures in more than one piece. */
const leftToRight = /\p{Script=Latin}|\p{Script=Han}|\p{Nd}[^\p{Nd}\p{L}]+\p{Nd}|[+(]/u;
const isolatedAlready = /^\u2068[^\u2068\u2069]*\u2069$/u;

/**
 * A value that would be turned round by the words it stands among, or turn them, kept to itself (UAX #9, FSI and PDI): a
 * bare phone number in Arabic would read 0142-555. Others are left as they are.
 */
export function isolated(text: string, direction: "ltr" | "rtl"): string {
  const stray = direction === "ltr" ? rightToLeft : leftToRight;
  return stray.test(text) && !isolatedAlready.test(text) ? `\u2068${text}\u2069` : text;
}

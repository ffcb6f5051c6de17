/** A word, number, day or mark of a course line, and where in the line it stands. */
export type Token = { text: string; offset: number; length: number } & (
  | { kind: "word" | "mark" | "day" | "clock" }
  | { kind: "number"; value: number }
);

const spelled = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
const shape =
  /(?<day>\d{4}-\d{2}-\d{2})|(?<clock>\d{1,2}:\d{2})|(?<number>\d+)|(?<word>\p{L}+(?:['’-]\p{L}+)*)|(?<mark>[^\s\d\p{L}])/gu;

/** "Change every 2–3 days" -> change, every, 2, -, 3, days. Any dash is "-"; numbers up to ten may be spelled. */
export function tokensOf(line: string): Token[] {
  return [...line.matchAll(shape)].map(({ 0: written, index: offset, groups = {} }): Token => {
    const at = { offset, length: written.length };
    const text = written.toLowerCase();
    if (groups["day"]) return { kind: "day", text, ...at };
    if (groups["clock"]) return { kind: "clock", text: text.padStart(5, "0"), ...at };
    if (groups["number"]) return { kind: "number", text, value: Number(text), ...at };
    if (groups["mark"]) return { kind: "mark", text: /\p{Pd}/u.test(text) ? "-" : text, ...at };
    const value = spelled.indexOf(text);
    return value < 0 ? { kind: "word", text, ...at } : { kind: "number", text, value, ...at };
  });
}

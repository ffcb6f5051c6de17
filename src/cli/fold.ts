import wrapAnsi from "wrap-ansi";

/** A long line goes on under its own words. columns: how many there are; indent: how far in it goes on. */
export function fold(line: string, columns: number, indent: number): string {
  const [first = "", ...rest] = wrapAnsi(line, columns - indent).split("\n");
  return [first, ...rest.map((more) => " ".repeat(indent) + more)].join("\n");
}

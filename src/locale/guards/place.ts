import type { Place } from "#problems/place.js";

/** Strings, braces and colons: all of JSON's signs that tell where a key is. */
const tokens = /"(?:[^"\\]|\\.)*"|[{}:]/g;

/** Where the message of a path stands in a JSON file; the top of the file where it is not there. */
export function placeInJson(file: string, text: string, path: readonly string[]): Place {
  const open: string[] = [];
  let [key, value] = ["", false];
  for (const { 0: token, index } of text.matchAll(tokens)) {
    if (token === "{") [open[open.length], value] = [key, false];
    else if (token === "}") open.pop();
    else if (token === ":") value = true;
    else if (!value) key = JSON.parse(token);
    else {
      if ([...open.slice(1), key].join("\n") === path.join("\n"))
        return { file, ...at(text, index), length: token.length };
      value = false;
    }
  }
  return { file, line: 1, column: 1, length: 1 };
}

const at = (text: string, index: number) => {
  const lines = text.slice(0, index).split("\n");
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
};

import stringWidth from "string-width";
import { describe, expect, it } from "vitest";
import { excerpt } from "../../src/cli/excerpt.js";

/** What stands above the carets, by terminal columns. */
const pointedAt = (line: string, words: string, room = 100): string => {
  const { text, carets } = excerpt(line, line.indexOf(words) + 1, words.length, room);
  const indent = carets.length - carets.trimStart().length;
  let column = 0;
  let found = "";
  for (const { segment } of new Intl.Segmenter().segment(text)) {
    if (column >= indent && column < carets.length) found += segment;
    column += stringWidth(segment);
  }
  return found;
};

describe("the caret stands under the exact words", () => {
  it.each([
    ["plain", "  weight: 24.6", "24.6"],
    ["after a tab", "\tweight:\t24.6 # here", "24.6"],
    ["after wide characters", "name: 小白 weight: 24.6", "24.6"],
    ["under wide characters", "name: 小白 and more", "小白"],
    ["after combining marks", "name: Zoe\u0308 e\u0301 weight: 24.6", "24.6"],
    ["under a combining mark", "name: Zoe\u0308, dog", "Zoe\u0308"],
    ["after an emoji of several code points", "name: 👩‍⚕️🐕 weight: 24.6", "24.6"],
    ["after a character outside the BMP", "name: 𝒜 weight: 24.6", "24.6"],
  ])("%s", (_, line, words) => expect(pointedAt(line, words)).toBe(words));

  it("covers the columns of a tab inside the words", () => {
    expect(excerpt("a\tb", 1, 3, 100)).toEqual({ text: "a   b", carets: "^^^^^" });
  });

  it("stands one past the end where something is missing there", () => {
    expect(excerpt("weight:", 8, 1, 100)).toEqual({ text: "weight:", carets: "       ^" });
  });

  it("cuts a line that is too wide, around the words", () => {
    const line = `{"a": "${"x".repeat(5000)}", "weight": "24.6", "b": "${"y".repeat(5000)}"}`;
    const { text } = excerpt(line, 1, 1, 60);
    expect(stringWidth(text)).toBeLessThanOrEqual(60);
    expect(pointedAt(line, "24.6", 60)).toBe("24.6");
    expect(excerpt(line, line.indexOf("24.6") + 1, 4, 60).text).toMatch(/^….*….*$|^….*…$/);
  });

  it("looks no further into a line of a megabyte than it shows", () => {
    const numbered = Array.from({ length: 150_000 }, (_, i) => String(i).padStart(7, "0")).join("");
    const near = numbered.slice(500_000 - 1000, 500_000 + 1000);
    expect(excerpt(numbered, 500_001, 7, 100)).toEqual(excerpt(near, 1001, 7, 100));
  });
});

it("shows and never obeys what a terminal would obey", () => {
  const { text } = excerpt("name: \u001b[31mRed\u001b[0m \u202egod\u2066 \u009b2J\u0007", 7, 3, 100);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be printed
  expect(text).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202e\u2066]/);
  expect(text).toContain("[31mRed");
});

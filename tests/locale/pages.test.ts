import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
// @ts-expect-error a script without types
import { localePage, localeTags, pageFile } from "../../scripts/locale-pages.mjs";

it.each(localeTags() as string[])(
  "the page a native reader reads of %s is that of its words (npm run locale-pages)",
  (tag) => expect(localePage(tag)).toBe(readFileSync(pageFile(tag), "utf8")),
);

import { problem } from "#problems/problem.js";
import { Fragment } from "../holes.js";
import type { Page, Values } from "../page.js";
import { blockHelpers } from "./blocks.js";
import { chooseHelpers } from "./choose.js";
import { type Helper, ownerKey } from "./helper.js";
import { valueHelpers } from "./values.js";
import { wordHelpers } from "./words.js";

const helpers: Record<string, Helper> = { ...wordHelpers, ...valueHelpers, ...blockHelpers, ...chooseHelpers };

export const helperNames = Object.keys(helpers);

/** The helpers as Handlebars calls them, for one page. A value that is not there is reported, never printed as nothing. */
export const helpersOn = (page: Page): Record<string, (...given: unknown[]) => unknown> =>
  Object.fromEntries(
    Object.entries(helpers).map(([name, help]) => [
      name,
      (...given: unknown[]) => {
        const { hash } = given.at(-1) as { hash: Values };
        const args = given.slice(0, -1);
        if (name === "is" || args.every((arg) => arg !== null && arg !== undefined))
          return help(page, args, hash, hash[ownerKey]);
        page.report(problem("template-value-absent", page.origins.place(hash[ownerKey]), { helper: name }));
        return new Fragment("");
      },
    ]),
  );

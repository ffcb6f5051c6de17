import Handlebars from "handlebars";
import { MissingWords } from "#locale/words.js";
import { helpersOn } from "./helpers/helpers.js";
import type { Page } from "./page.js";

/** Templates ready to run, by name ("handout/ring"). */
export type Compiled = Record<string, HandlebarsTemplateDelegate>;

/** What a run comes to: helpers called, lists gone through and templates entered; and all that these wrote. */
export type Work = { steps: number; length: number };

/** Thrown where a template goes on and on. */
export class EndlessTemplate extends Error {}

/** Thrown where a helper cannot do what a template asks of it. */
export class FailedHelper extends Error {
  constructor(
    readonly helper: string,
    cause: unknown,
  ) {
    super(`the helper ${helper} failed`, { cause });
  }
}

const noLimit: Work = { steps: Number.POSITIVE_INFINITY, length: Number.POSITIVE_INFINITY };

/**
 * The Markdown of a document. A template reaches the page's view and its helpers, and nothing else.
 * @throws EndlessTemplate where it takes more than `most`.
 */
export function run(
  compiled: Compiled,
  page: Page,
  document: string,
  most: Work = noLimit,
): { markdown: string; work: Work } {
  const work: Work = { steps: 0, length: 0 };
  const more = (steps: number, length: number): void => {
    work.steps += steps;
    work.length += length;
    if (work.steps > most.steps || work.length > most.length) throw new EndlessTemplate(document);
  };
  const counted =
    <A extends unknown[]>(write: (...given: A) => string) =>
    (...given: A): string => {
      more(1, 0);
      const text = write(...given);
      more(0, text.length);
      return text;
    };
  const partials = Object.fromEntries(Object.entries(compiled).map(([name, write]) => [name, counted(write)]));
  const helpers = Object.fromEntries(
    Object.entries(helpersOn(page)).map(([name, help]) => [
      name,
      (...given: unknown[]) => {
        more(1, 0);
        try {
          return help(...given);
        } catch (error) {
          throw error instanceof MissingWords ? error : new FailedHelper(name, error);
        }
      },
    ]),
  );
  const each = function (this: unknown, given: unknown, options: Handlebars.HelperOptions): string {
    return Handlebars.helpers["each"]?.call(this, given, { ...options, fn: counted(options.fn) });
  };
  const markdown = partials[`${document}/${document}`]?.(page.view, { helpers: { ...helpers, each }, partials }) ?? "";
  return { markdown, work };
}

import i18next, { type i18n, type Resource } from "i18next";
import type { Place } from "#problems/place.js";
import { type Outcome, type Problem, problem, stops } from "#problems/problem.js";

/** One namespace of one language: keys to messages, nested as its file nests them. */
export type Messages = { [key: string]: string | Messages };

/**
 * The words of every language, by tag and then by namespace; texts: all that lies in the folders, by path. own: where a clinic
 * has laid sentences of its own over ours (./override.ts), their names by tag, and ours alone.
 */
export type Locales = {
  tags: string[];
  messages: Record<string, Record<string, Messages>>;
  texts: Record<string, string>;
  words: i18n;
  own?: { written: Record<string, readonly string[]>; ours: Locales };
};

/** guard.json and status.json lie beside the words and are none. */
const fileShape = /(?:^|\/)locales\/([A-Za-z0-9-]+)\/(?!guard\.json|status\.json)([a-z-]+)(?:\/[a-z-]+)?\.json$/;

const isMessages = (value: unknown): value is Messages =>
  typeof value === "object" &&
  value !== null &&
  !Array.isArray(value) &&
  Object.values(value).every((inner) => typeof inner === "string" || isMessages(inner));

/**
 * Reads the words of every language. files: text by path, "locales/es/handout.json"; the files of a folder are one
 * namespace ("locales/es/problems/plan.json" adds to "problems").
 */
export function openLocales(files: Record<string, string>): Outcome<Locales> {
  const problems: Problem[] = [];
  const messages: Locales["messages"] = {};
  for (const [file, text] of Object.entries(files)) {
    const [, tag, namespace] = fileShape.exec(file) ?? [];
    if (tag === undefined || namespace === undefined) continue;
    const read = parseMessages(text);
    if ("detail" in read) {
      problems.push(problem("locale-syntax", start(file), { detail: read.detail }));
      continue;
    }
    messages[tag] = { ...messages[tag], [namespace]: { ...messages[tag]?.[namespace], ...read.messages } };
  }
  if (stops(problems)) return { value: null, problems };
  return { value: { tags: Object.keys(messages).sort(), messages, texts: files, words: engine(messages) }, problems };
}

/** The messages of a file, or why there are none. */
export function parseMessages(text: string): { messages: Messages } | { detail: string } {
  try {
    const value: unknown = JSON.parse(text);
    return isMessages(value) ? { messages: value } : { detail: "not an object of messages" };
  } catch (error) {
    return { detail: error instanceof Error ? error.message : String(error) };
  }
}

const start = (file: string): Place => ({ file, line: 1, column: 1, length: 1 });

/** i18next decides plural and context; it is given every language as values and never fills a placeholder. */
function engine(messages: Locales["messages"]): i18n {
  const words = i18next.createInstance();
  void words.init({
    resources: messages as Resource,
    fallbackLng: false,
    initAsync: false,
  });
  return words;
}

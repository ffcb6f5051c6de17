import type { Locales, Messages } from "../locales.js";
import { source } from "../source.js";
import { type Form, formsOf, type Sentence } from "./sentence.js";

/** Every sentence of the source or of the language, file by file. */
export function sentencesOf(locales: Locales, tag: string): Sentence[] {
  const files = [source, tag].flatMap((each) => filesOf(locales, each));
  return [...new Set(files)].flatMap((file) => {
    const [from, into] = [source, tag].map((each) => formsIn(locales, `locales/${each}/${file}`));
    const namespace = file.replace(/[/.].*$/, "");
    return [...new Set([...(from?.keys() ?? []), ...(into?.keys() ?? [])])].map((stem) => ({
      name: `${namespace}:${stem}`,
      file: `locales/${tag}/${file}`,
      source: from?.get(stem) ?? [],
      own: into?.get(stem) ?? [],
    }));
  });
}

const beside = new Set(["guard.json", "status.json"]);

const filesOf = ({ texts }: Locales, tag: string): string[] =>
  Object.keys(texts)
    .filter((path) => path.startsWith(`locales/${tag}/`) && path.endsWith(".json"))
    .map((path) => path.slice(`locales/${tag}/`.length))
    .filter((file) => !beside.has(file));

const formsIn = ({ texts }: Locales, path: string): Map<string, Form[]> =>
  formsOf(JSON.parse(texts[path] ?? "{}") as Messages);

/**
 * Stamps a translation: npm run translated -- TAG [--still-right KEY]... [--by fluent|qualified]
 * What is new or changed is stamped as made from the source as it is now. A stale sentence whose words have not changed is
 * left and named; --still-right (a key, or "all") says that it needs no change. --by says who has read all that is fresh.
 */
import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { openLocales } from "../dist/locale/locales.js";
import { reviewers } from "../dist/locale/status/kinds.js";
import { stamped, stampsOf } from "../dist/locale/status/stamps.js";
import { statusesOf } from "../dist/locale/status/status.js";

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { "still-right": { type: "string", multiple: true, default: [] }, by: { type: "string" } },
});
const [tag] = positionals;
if (!tag || (values.by && !reviewers.includes(values.by))) {
  console.error(`usage: npm run translated -- TAG [--still-right KEY]... [--by ${reviewers.join("|")}]`);
  process.exit(2);
}

const entries = await readdir("locales", { recursive: true, withFileTypes: true });
const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
const texts = await Promise.all(paths.map(async (path) => [path, await readFile(path, "utf8")]));
const { value: locales, problems } = openLocales(Object.fromEntries(texts));
if (!locales) throw new Error(JSON.stringify(problems));

const statuses = statusesOf(locales, tag);
const named = values["still-right"];
const stillRight = named.includes("all") ? statuses.map(({ name }) => name) : named;
const { text, left } = stamped(statuses, stampsOf(locales, tag), { stillRight, by: values.by });
await writeFile(`locales/${tag}/status.json`, text);
for (const name of left) console.log(`stale: ${name}`);
console.log(`${tag}: ${Object.keys(JSON.parse(text)).length - left.length} fresh, ${left.length} stale`);

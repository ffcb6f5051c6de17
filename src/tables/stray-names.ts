import type { CareTables } from "./care-tables.js";
import { idsOf, type Says } from "./statements.js";

/** Rows named by topics, bandages, additions, conflicts and collars that no table holds. */
export function strayNames(tables: CareTables): { file: string; detail: string }[] {
  const { topics, statements, sites, bandages, animals, additions, stronger, conflicts, ownWords, log, collars } =
    tables;
  const known = new Set(Object.entries(statements).flatMap(([list, all]) => all.map(({ id }) => `${list}.${id}`)));
  const bandageIds = new Set(bandages.map(({ id }) => id));
  const siteIds = new Set(sites.map(({ id }) => id));
  const animalIds = new Set(animals.map(({ id }) => id));
  const traits = new Set(topics.flatMap(({ traits }) => traits));

  const missing = (file: string, row: string, names: readonly string[], held: ReadonlySet<string>) =>
    names.filter((name) => !held.has(name)).map((name) => ({ file, detail: `${row}: there is no "${name}"` }));
  const unsaid = (file: string) => (row: Says & { id: string }) => missing(file, row.id, idsOf(row), known);

  return [
    ...topics.flatMap((topic) => unsaid(`shared/topics/${topic.id}.json`)(topic)),
    ...bandages.flatMap(unsaid("shared/bandages.json")),
    ...additions.flatMap(unsaid("shared/additions.json")),
    ...additions.flatMap(({ id, when }) => [
      ...missing("shared/additions.json", id, when.bandage ?? [], bandageIds),
      ...missing("shared/additions.json", id, when.site ?? [], siteIds),
      ...missing("shared/additions.json", id, [...(when.traits ?? []), ...(when.traitsNot ?? [])], traits),
    ]),
    ...additions.flatMap(({ id, when: { animal = [], animalNot = [] } }) =>
      missing("shared/additions.json", id, [...animal, ...animalNot], animalIds),
    ),
    ...topics.flatMap(({ id, onceClosed = [] }) =>
      missing(`shared/topics/${id}.json`, id, [onceClosed].flat(), new Set(topics.map(({ id }) => id))),
    ),
    ...topics.flatMap(({ id, doubtful }) => missing(`shared/topics/${id}.json`, id, doubtful, animalIds)),
    ...stronger.flatMap(({ id, said, needless }) => missing("shared/stronger.json", id, [said, ...needless], known)),
    ...conflicts.flatMap(({ id, one, other }) => missing("shared/conflicts.json", id, [...one, ...other], known)),
    ...log.flatMap((row) => missing("shared/log.json", row.id, [...(row.for ?? []), ...(row.unless ?? [])], known)),
    ...ownWords.rows.flatMap(({ id, against }) => missing("shared/own-words.json", id, against, known)),
    ...Object.values(collars.kinds).flatMap(({ id, statements: said, ofAnimal }) => [
      ...missing(
        "shared/collars.json",
        id,
        [...said, ...Object.values(ofAnimal).flat()].map((row) => `collar.${row}`),
        known,
      ),
      ...missing("shared/collars.json", id, Object.keys(ofAnimal), animalIds),
    ]),
  ];
}

import { type Addition, meets } from "./additions.js";
import { gravest, type Says, type Statements, urgencies } from "./statements.js";
import type { Topic } from "./topic.js";

/** What is said, and of each sign how soon it asks for something. */
export type AlwaysSaid = Omit<Says, "signs"> & { signs: { id: string; urgency: (typeof urgencies)[number] }[] };

/**
 * All that is said of a topic on every page, wherever on the body it is and whatever the animal: its own statements and those
 * of the additions that ask for no more than the topic has by itself. Each once, in the order of the page; signs are graver
 * where one of them says so.
 */
export function alwaysSaid(topic: Topic, additions: readonly Addition[], statements: Statements): AlwaysSaid {
  const all: Says[] = [topic, ...additions.filter((addition) => holdsForAll(addition, topic))];
  const listed = (list: Exclude<keyof Says, "signs">) =>
    statements[list].map(({ id }) => id).filter((id) => all.some((says) => says[list].includes(id)));
  const signs = statements.signs.flatMap(({ id, urgency }) => {
    const said = all.flatMap((says) => says.signs.filter((sign) => sign.id === id));
    return said.length > 0 ? [{ id, urgency: gravest([urgency, ...said.flatMap((one) => one.urgency ?? [])]) }] : [];
  });
  return {
    done: listed("done"),
    steps: listed("steps"),
    normal: listed("normal"),
    signs: urgencies.flatMap((one) => signs.filter(({ urgency }) => urgency === one)),
    avoid: listed("avoid"),
    supplies: listed("supplies"),
    ends: listed("ends"),
  };
}

const holdsForAll = ({ when: { traits, traitsNot, species, ...more } }: Addition, topic: Topic): boolean =>
  Object.keys(more).length === 0 &&
  meets(traits, topic.traits) &&
  !(traitsNot && meets(traitsNot, topic.traits)) &&
  topic.species.every((one) => meets(species, [one]));

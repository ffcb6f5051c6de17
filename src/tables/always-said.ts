import type { Addition } from "./additions.js";
import type { Says, Statements, spoken } from "./statements.js";
import type { Topic } from "./topic.js";

/**
 * All that is said of a topic on every page, wherever on the body it is and whatever the animal: its own statements and those
 * of the additions that ask for no more than the topic has by itself. Each once, in the order of the page; signs are graver
 * where one of them says so.
 */
export function alwaysSaid(topic: Topic, additions: readonly Addition[], statements: Statements): Says {
  const all: Says[] = [topic, ...additions.filter((addition) => holdsForAll(addition, topic))];
  const listed = (list: Exclude<(typeof spoken)[number], "signs">) =>
    statements[list].map(({ id }) => id).filter((id) => all.some((says) => says[list].includes(id)));
  const signs = statements.signs.flatMap((row) => {
    const said = all.flatMap((says) => says.signs.filter(({ id }) => id === row.id));
    const gravest = ranks.find((rank) => row.urgency === rank || said.some(({ urgency }) => urgency === rank)) ?? null;
    return said.length > 0 ? [{ id: row.id, urgency: gravest }] : [];
  });
  return {
    done: listed("done"),
    steps: listed("steps"),
    normal: listed("normal"),
    signs: ranks.flatMap((rank) => signs.filter(({ urgency }) => urgency === rank)),
    avoid: listed("avoid"),
    supplies: listed("supplies"),
    ends: listed("ends"),
  };
}

const ranks = ["now", "today", "visit"] as const;

function holdsForAll({ when: { traits, traitsNot, species, ...more } }: Addition, topic: Topic): boolean {
  return (
    Object.keys(more).length === 0 &&
    (!traits || traits.some((trait) => topic.traits.includes(trait))) &&
    !traitsNot?.some((trait) => topic.traits.includes(trait)) &&
    (!species || topic.species.every((one) => species.includes(one)))
  );
}

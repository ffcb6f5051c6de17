import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import { type Outcome, stops } from "#problems/problem.js";
import type { CareTables } from "#tables/topics.js";
import type { Collar, Course } from "../facts.js";
import { animalIs } from "../signs/animal-is.js";
import { chooseCollar } from "./choose.js";
import { cm, inUnit } from "./length.js";
import { checkMeasures } from "./plausible.js";
import { adviseCollar, checkProtection } from "./protects.js";
import { readUntil } from "./until.js";
import { howToWear } from "./wear.js";

/**
 * The collar of the clinic's stock that fits, and how to wear it; null where the plan has none. The shortest that passes the
 * nose by the margin (at least 1 inch in the source used; sources disagree) and whose neck holds the animal's.
 * Lengths come in the unit of the plan's own measure. Without a stock no size is chosen, and how to wear it is told all the same.
 */
export function computeCollar(plan: Plan, course: Course, tables: CareTables): Outcome<Collar | null> {
  const { collar: asked } = plan;
  if (!asked) return { value: null, problems: adviseCollar(plan, tables) };
  const { collars: rules } = tables;
  const kind = rules.kinds[asked.type];
  const least = cm(rules.pastNose.margin);

  const chosen = chooseCollar(plan, asked, kind, least);
  const until = readUntil(plan, asked, course, rules);
  const problems = [
    ...checkMeasures(plan, asked, rules),
    ...chosen.problems,
    ...checkProtection(plan, asked, tables),
    ...until.problems,
  ];
  if (!until.value || stops(problems)) return { value: null, problems };

  const { size = null, depth = null } = chosen.value ?? {};
  const { unit } = asked.length;
  const margin = kind.passesNose ? inUnit(least, unit) : null;
  const from = placeOf(plan.places, "collar");
  const ofAnimal = animalIs(plan, tables.animals).value?.flatMap((id) => kind.ofAnimal[id] ?? []) ?? [];
  return {
    value: {
      kind: kind.id,
      size,
      depth,
      pastNose: kind.passesNose && depth ? inUnit(cm(depth).minus(cm(asked.length)), unit) : null,
      margin,
      fingers: { least: rules.fingers.least, most: rules.fingers.most },
      until: until.value,
      statements: howToWear([...kind.statements, ...ofAnimal], margin, tables, from),
      from,
    },
    problems,
  };
}

import { clockOf } from "./clock-words.js";

type Fields = Record<string, string>;
/** What a clinician writes without naming a field: how it looks, and the fields it says. */
type Phrase = { looks: RegExp; says: (parts: readonly string[]) => Fields };

const number = "\\d+(?:[.,]\\d+)?";
const often = [
  "every other day",
  "every \\d+ (?:days|h|hrs?|hours?)",
  "every (?:morning|evening|night)",
  "q ?\\d+ ?h(?:rs?|ours?)?",
  "(?:once|twice|(?:three|four|[1-4]) times) (?:a|per) day",
  "(?:(?:once|twice) )?daily",
  "once a week",
  "sid|bid|tid|qid",
].join("|");
const forms = "(tablet|tab|capsule|cap)s?";
const amount = `(\\d+ \\d/\\d|\\d+ ?½|\\d/\\d|½|half(?: an?)?|${number})`;
const counted = "(tablet|tab|capsule|cap|ml|drop|spray|unit)s?";

const phrase = (looks: string, says: Phrase["says"]): Phrase => ({
  looks: new RegExp(`^(?:${looks})(?![\\p{L}\\p{N}/%])`, "iu"),
  says,
});

/** "tab" -> "tablet"; the rest as a plan writes it. */
const whole: Record<string, string> = { tab: "tablet", cap: "capsule", ml: "mL", iu: "IU" };
const inFull = (word = "") => whole[word.toLowerCase()] ?? word.toLowerCase();
const lasting = (n = "", unit: "day" | "week") => `${n} ${n === "1" ? unit : `${unit}s`}`;
const perWeight = (unit = "", of = "") => `${inFull(unit)}/${of.toLowerCase()}`;

/** The days a medicine is said to be given on, as days after the discharge. */
export const daysSaid: Record<string, number> = { yesterday: -1, today: 0, tonight: 0, tomorrow: 1 };

const dayWord = `(${Object.keys(daysSaid).join("|")})(?: morning| evening| night)?`;
const clock = "(\\d{1,2}(?:[:.]\\d\\d| ?[ap]\\.?m)(?: ?[ap]\\.?m)?\\.?)";

/**
 * Words before a time of day that shows itself as one, by its minutes or by its half of the day; its day may stand beside it:
 * "first tomorrow at 8 pm" is "tomorrow 20:00".
 */
const atTime = (words: string, field: string): Phrase =>
  phrase(`${words}:? (?:${dayWord}(?: at)? )?${clock}(?: ${dayWord})?`, ([before, said = "", after]) => {
    const time = clockOf(said);
    if (time === null || (before && after)) return {};
    return { [field]: [before ?? after, time].join(" ").trim().toLowerCase() };
  });

/**
 * The words of a prescription as they are usually written: "75 mg tablet", "4.4 mg/kg", "q24h", "for 4 days", "with food". How
 * much to give is read only as an order, before how often or after "give": "14 tablets" may be what goes home. The Latin
 * abbreviations of eyes and ears are not read: each is easily taken for another.
 */
const phrases: readonly Phrase[] = [
  phrase(`(?:dose:? )?(${number}) ?(mg|ml|iu|units)/(kg|lb|m2)`, ([n, unit, of]) => ({
    dose: `${n} ${perWeight(unit, of)}`,
  })),
  phrase(
    `(?:liquid:? )?(${number}) ?(mg|iu)/ml(?: (?:oral )?(?:liquid|susp(?:ension)?\\.?|syrup|sol(?:utio)?n\\.?))?`,
    ([n, unit]) => ({
      liquid: `${n} ${inFull(unit)}/mL`,
    }),
  ),
  phrase(`(?:insulin:? )?(${number}) ?(?:units|u)/ml`, ([n]) => ({ insulin: `${n} units/mL` })),
  phrase(`${forms}:? (${number}) ?(mg|iu)`, ([form, n, unit]) => ({ [inFull(form)]: `${n} ${inFull(unit)}` })),
  phrase(`(${number}) ?(mg|iu) ${forms}`, ([n, unit, form]) => ({ [inFull(form)]: `${n} ${inFull(unit)}` })),
  phrase(`give:? ${amount} ?${counted}`, ([much, form]) => giveOf(much, form)),
  phrase(`${amount} ?${counted}(?= (?:(?:by mouth|po) )?(?:${often}))`, ([much, form]) => giveOf(much, form)),
  phrase(`(${often})`, ([said = ""]) => ({ every: said.replace(/^every (\d+ ?h.*)$/i, "$1") })),
  phrase("(?:(?:for|x) ?(\\d+) ?(d|w|days?|weeks?)|(\\d+) (days?|weeks?))", ([n, unit, bare, whole = unit]) => ({
    for: lasting(n ?? bare, /^w/i.test(whole ?? "") ? "week" : "day"),
  })),
  // 5/7 is five days and 2/52 two weeks.
  phrase("(?:for|x) ?(\\d+)/(7|52)", ([n, of]) => ({ for: lasting(n, of === "7" ? "day" : "week") })),
  phrase("with or without food", () => ({ food: "either" })),
  phrase("(with|without) food", ([said = ""]) => ({ food: said.toLowerCase() })),
  phrase("not given(?: yet)?", () => ({ "last given": "not given" })),
  atTime("(?:last )?given(?: at)?", "last given"),
  atTime("first(?: dose)?(?: at)?", "first"),
  phrase("splits (?:in(?:to)? )?(whole|half|halves|quarters)", ([said = ""]) => ({
    splits: said.toLowerCase().replace("half", "halves"),
  })),
  phrase(`syringe:? (?:is )?(?:marked )?(?:every |in |at )?(?:each )?(${number}) ?ml`, ([n]) => ({
    syringe: `${n} mL`,
  })),
  phrase("(?:by mouth|po|orally)", () => ({ route: "mouth" })),
  phrase("(?:in(?:to)? (?:the )?)?((?:left|right) (?:ear|eye)|both (?:ears|eyes))", ([said = ""]) => ({
    route: said.toLowerCase(),
  })),
];

const shares: Record<string, number> = { "1/2": 0.5, "1/4": 0.25, "3/4": 0.75, "½": 0.5 };

/** "1 1/2", "half a" or "0.5", and what of; nothing for a part that no tablet is cut into. */
function giveOf(much = "", form = ""): Fields {
  const [, wholes = "0", share] = /^(?:(\d+)(?: |(?=½)))?(\d\/\d|½)$/.exec(much.replace(/^half.*$/i, "½")) ?? [];
  if (share === undefined) return { give: `${much} ${inFull(form)}` };
  const part = shares[share];
  return part === undefined ? {} : { give: `${Number(wholes) + part} ${inFull(form)}` };
}

/** The phrase that text begins with, the fields it says, and how long it is; null where it begins with none. */
export function phraseAt(text: string): { fields: Fields; length: number } | null {
  for (const { looks, says } of phrases) {
    const found = looks.exec(text);
    if (!found) continue;
    const fields = says(found.slice(1));
    if (Object.keys(fields).length > 0) return { fields, length: found[0].length };
  }
  return null;
}

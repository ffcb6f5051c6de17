import type { Amount } from "#compute/facts.js";
import type { Locales } from "#locale/locales.js";
import { speak } from "#locale/voice.js";

/** The lists of statements a topic names, in the order staff read them; its signs come after the steps. */
const lists = { before: ["done", "steps"], after: ["normal", "avoid", "supplies", "ends"] } as const;
type List = (typeof lists.before)[number] | (typeof lists.after)[number];

/** A topic, and what is said of it, by the ids of the statements. */
type Topic = {
  id: string;
  signs: readonly { id: string; urgency: string }[];
  source: string;
} & Record<List, readonly string[]>;
type Statements = Record<List | "signs", readonly { id: string; values: Record<string, string | Amount> }[]>;

/** Every sentence that a topic puts before an owner. of: the list it stands in; of a sign, its urgency. */
export type TopicWords = { name: string; said: { of: string; text: string }[]; source: string };

/** A topic in the words of a language. patient: what stands for the animal's name. */
export function topicWords(
  topic: Topic,
  statements: Statements,
  locales: Locales,
  { language, patient }: { language: string; patient: string },
): TopicWords {
  const voice = speak(locales, language);
  const word = (list: keyof Statements, id: string): string => {
    const own = statements[list].find((row) => row.id === id)?.values ?? {};
    const told = Object.entries(own).map(([name, value]) => [
      name,
      typeof value === "string" ? value : voice.amount(value),
    ]);
    // No animal stands behind a topic; a language whose words agree with one's sex says the masculine, as its own grammar does.
    const values = { name: patient, context: "male", ...Object.fromEntries(told) };
    return voice.say(`statements:${list}.${id}`, values).replaceAll("**", "");
  };
  const listed = (list: List) => topic[list].map((id) => ({ of: list as string, text: word(list, id) }));
  const signs = topic.signs.map(({ id, urgency }) => ({ of: urgency, text: word("signs", id) }));
  return {
    name: voice.say(`topics:${topic.id}.name`),
    said: [...lists.before.flatMap(listed), ...signs, ...lists.after.flatMap(listed)],
    source: topic.source,
  };
}

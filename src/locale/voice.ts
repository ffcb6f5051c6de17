import { amountsOf } from "./amounts.js";
import { datesOf } from "./dates.js";
import { directionOf } from "./direction.js";
import { isolated } from "./isolate.js";
import type { Locales } from "./locales.js";
import { matchFor, regional } from "./match.js";
import { numbersOf } from "./numbers.js";
import { phonesOf } from "./phones.js";
import type { Trace } from "./trace.js";
import { fill, type Message, MissingWords, messagesOf, type Say } from "./words.js";

/** How one language says things in one country: its words, and its dates, numbers, money, lists and phone numbers. */
export type Voice = ReturnType<typeof voiceOf>;

/** What is spoken where nobody has put the asked language into words. */
const lastResort = "en";

/**
 * The voice of a language. tag: what was asked for; the voice's own language is the nearest there is (./match.ts), else
 * English, and `asked` tells. country: where the clinic is, "US"; it settles the clock, the money and the first day of the
 * week where the tag leaves them open.
 * @throws MissingWords from say and message where the language has no such key or a value is not given.
 */
export function speak(locales: Locales, tag: string, country?: string): Voice {
  const key = `${tag} ${country ?? ""}`;
  const spoken = voices.get(locales)?.get(key);
  if (spoken) return spoken;
  const voice = voiceOf(locales, tag, country);
  voices.set(locales, new Map([...(voices.get(locales) ?? []), [key, voice]]));
  return voice;
}

/** Making the formats of a language takes far longer than using them, and a voice never changes. */
const voices = new WeakMap<Locales, Map<string, Voice>>();

/** The same voice, all that it says marked with the key of its message. */
export const speakTraced = (locales: Locales, tag: string, country: string | undefined, trace: Trace): Voice =>
  voiceOf(locales, tag, country, trace.mark);

function voiceOf(
  locales: Locales,
  tag: string,
  country: string | undefined,
  mark: Trace["mark"] = (_key, words) => words,
) {
  const match = matchFor(tag, locales.tags, country);
  const language = match ?? matchFor(lastResort, locales.tags, country) ?? lastResort;
  const region = regional(match ? tag : lastResort, country);
  const written = messagesOf(locales.words, language);
  const message: Message = (key, chosen) => mark(key, written(key, chosen));
  const numbers = numbersOf(region);
  const direction = directionOf(region);

  const say: Say = (key, values = {}) => {
    const { count, context } = values;
    const chosen = {
      ...(typeof count === "number" ? { count } : {}),
      ...(typeof context === "string" ? { context } : {}),
    };
    return fill(message(key, chosen), (name) => {
      const value = Object.hasOwn(values, name) ? values[name] : undefined;
      if (value === undefined) throw new MissingWords(key, language, name);
      return typeof value === "number" ? numbers.number(value) : isolated(value, direction);
    });
  };
  const listOf = (type: Intl.ListFormatType) => new Intl.ListFormat(region, { type, style: "long" });
  const lists = { and: listOf("conjunction"), or: listOf("disjunction") };

  return {
    /** The tag that was asked for, and the language that speaks. */
    asked: tag,
    language,
    /** Whether the asked language is one we have. */
    speaks: match !== null,
    direction,
    /** The tag dates and numbers are written in: "es-US". */
    region,
    message,
    /** Words that are no message of the language's, named where a trace is kept. */
    mark,
    say,
    ...datesOf(region, (day) => fill(message("language:first-of-month"), () => day)),
    ...numbers,
    ...amountsOf(numbers, say),
    phone: phonesOf(country),
    /** "bandage change" at the start of a line: "Bandage change" */
    capital: (text: string) =>
      text.replace(/^([\u2800-\u28ff]*)(\p{Ll})/u, (_, marks, first) => marks + first.toLocaleUpperCase(region)),
    /** In a row, parted as the language parts them: "a, b", "a，b" */
    row: (items: readonly string[], by: "comma" | "semicolon" = "comma") => items.join(message(`language:${by}`)),
    /** "a, b, and c"; "a, b, or c" */
    list: (items: readonly string[], join: "and" | "or" = "and") => lists[join].format(items),
  };
}

/** What is seen of a thing, and other words that it goes by. */
export type Texts = { seen: string; also: string };

/**
 * Looks things up by what is typed: each word of it stands anywhere in what is seen of the thing, or begins another word it goes
 * by; what shows them comes first. Several words that are seen just as they are typed find nothing else. Neither capitals nor
 * accents count, and nothing typed finds nothing.
 */
export function finder<T>(things: readonly T[], textsOf: (thing: T) => Texts): (typed: string) => T[] {
  const all = things.map((thing) => {
    const { seen, also } = textsOf(thing);
    return { thing, seen: plain(seen), also: ` ${plain(also)}` };
  });
  return (typed) => {
    const phrase = plain(typed);
    const words = phrase.split(" ").filter(Boolean);
    const asTyped = words.length > 1 ? all.filter(({ seen }) => seen.includes(phrase)) : [];
    if (asTyped.length > 0) return asTyped.map(({ thing }) => thing);
    if (words.length === 0) return [];
    const shows = ({ seen }: { seen: string }) => words.every((word) => seen.includes(word));
    return all
      .filter(({ seen, also }) => words.every((word) => seen.includes(word) || hasBeginning(also, word)))
      .toSorted((a, b) => Number(shows(b)) - Number(shows(a)))
      .map(({ thing }) => thing);
  };
}

/** Chinese puts no space between words, so that one may begin anywhere. */
const hasBeginning = (also: string, word: string): boolean =>
  also.includes(/^\p{Script=Han}/u.test(word) ? word : ` ${word}`);

/** Letters that a keyboard without them writes otherwise, and that are no letter with an accent to Unicode. */
const letters: Record<string, string> = { đ: "d", ß: "ss", œ: "oe", æ: "ae", ة: "ه", ى: "ي" };
/** An Arabic word is the same with its article. */
const article = /(?<!\p{L})ال(?=\p{L})/gu;

/** Words in small letters without accents, one space between them. */
const plain = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[đßœæةى]/gu, (letter) => letters[letter] ?? letter)
    .replace(article, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

import type { Locales, Messages } from "./locales.js";

/** What each language calls medicines, by their ids. */
export const medicineNames = ({ messages }: Locales): Record<string, string>[] =>
  Object.values(messages).map(({ medicines }) => namesIn(medicines?.["name"]));

const namesIn = (names: Messages[string] = {}): Record<string, string> =>
  Object.fromEntries(Object.entries(names).filter((entry): entry is [string, string] => typeof entry[1] === "string"));

import type { cases } from "../examples/examples.js";

type Case = (typeof cases)[number];
/** with: words that only the page has which is pictured. */
export type Paper = Cut & { name: string; of: Case; language: string; with: string };
export type Cut = { paper: "letter" | "a4"; large: boolean };
export type Screen = { name: string; of: Case; language: string; width: number; colorScheme: "light" | "dark" };

const dog = "dog-cheek-abscess";
const cat = "cat-abscess-at-home";
const letter = { paper: "letter", large: false } as const;
const a4 = { paper: "a4", large: false } as const;
const large = { paper: "letter", large: true } as const;
/** Words on page one, whatever the language. */
const first = "60000";

export const papers: Paper[] = [
  { name: "dog-en-first", of: dog, language: "en", ...letter, with: first },
  { name: "dog-en-medicines", of: dog, language: "en", ...letter, with: "For pain and swelling" },
  { name: "dog-ar-a4-first", of: dog, language: "ar", ...a4, with: first },
  { name: "dog-es-large-first", of: dog, language: "es", ...large, with: first },
  { name: "cat-es-first", of: cat, language: "es", ...letter, with: first },
  { name: "cat-es-medicines", of: cat, language: "es", ...letter, with: "Para combatir" },
  { name: "cat-ar-a4-first", of: cat, language: "ar", ...a4, with: first },
  { name: "cat-en-large-first", of: cat, language: "en", ...large, with: first },
];

export const screens: Screen[] = [
  { name: "dog-en-360-light", of: dog, language: "en", width: 360, colorScheme: "light" },
  { name: "dog-en-360-dark", of: dog, language: "en", width: 360, colorScheme: "dark" },
  { name: "dog-ar-320-light", of: dog, language: "ar", width: 320, colorScheme: "light" },
  { name: "cat-es-360-dark", of: cat, language: "es", width: 360, colorScheme: "dark" },
];

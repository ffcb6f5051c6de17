import type { Told } from "./facts.js";

/** Plain text stands for text in the language the staff write in. */
export const toldIn = (told: string | Told, language: string): Told =>
  typeof told === "string" ? { [language]: told } : told;

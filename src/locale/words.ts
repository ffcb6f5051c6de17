import type { i18n } from "i18next";

/** count picks the plural, context the form ("female"); both may also be shown. */
export type Chosen = { count?: number; context?: string };
export type Say = (key: string, values?: Record<string, string | number>) => string;

/** Thrown where a page needs words its language has not got: a page with a hole in it must never be printed. */
export class MissingWords extends Error {
  constructor(
    readonly key: string,
    readonly language: string,
    readonly value: string | null = null,
  ) {
    super(value === null ? `${language}: no words for ${key}` : `${language}: ${key} needs a value for ${value}`);
  }
}

/** The message of a key as its language wrote it, placeholders and all. */
export type Message = (key: string, chosen?: Chosen) => string;

export const messagesOf =
  (words: i18n, language: string): Message =>
  (key, chosen = {}) => {
    const options = { ...chosen, lng: language, skipInterpolation: true };
    if (!words.exists(key, options)) throw new MissingWords(key, language);
    return words.t(key, options);
  };

/** Any name at all: one that nobody fills must be missed aloud, and never be printed. */
const placeholder = /\{\{([^{}]+)\}\}/g;

/** The names of the values a message shows. */
export const placeholders = (message: string): string[] =>
  [...message.matchAll(placeholder)].map(([, name = ""]) => name);

/** Puts values into a message; what a value holds is never read again. */
export const fill = (message: string, show: (name: string) => string): string =>
  message.replace(placeholder, (_, name: string) => show(name));

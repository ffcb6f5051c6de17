/** CLDR's narrow and thin spaces are in few text fonts; the ordinary ones of the same breaking behaviour are in all. */
export const plainSpaces = (text: string): string => text.replaceAll("\u202f", "\u00a0").replaceAll("\u2009", " ");

const afterWideStop = /(?<=[，。、：；！？）」』]) /gu;

/** Without the spaces after full-width stops, which hold their own (Requirements for Chinese Text Layout, 3.1). */
export const wideStops = (text: string): string => text.replace(afterWideStop, "");

/** Sentences one after another. */
export const inARow = (sentences: readonly string[]): string => wideStops(sentences.join(" "));

/** CLDR's narrow and thin spaces are in few text fonts; the ordinary ones of the same breaking behaviour are in all. */
export const plainSpaces = (text: string): string => text.replaceAll("\u202f", "\u00a0").replaceAll("\u2009", " ");

/** Vowels that are spoken as one (Duden, Die Grammatik: the diphthongs, and long vowels written double; from memory). */
const nucleus = /aa|ee|oo|ie|ei|ai|au|eu|äu|ey|ay|[aeiouyäöü]/gu;

/** The syllables of a German word by its spelling; the u of qu is no vowel. "Familie" comes out one short. */
export const germanSyllables = (word: string): number =>
  word.toLowerCase().normalize("NFC").replace(/qu/g, "q").match(nucleus)?.length ?? 0;

/** Vowels written together are one syllable, but for an é, è, ê, ï or ë after another: "aé-rer", "na-ïf" (from memory). */
const nucleus = /[éèêïë]?[aeiouyàâîôùûüœæ]+|[éèêïë]/gu;

/**
 * The written syllables of a French word: a mute e after a consonant is one, as where words are divided. The u of qu, gue and
 * gui is not spoken.
 */
export const frenchSyllables = (word: string): number =>
  word
    .toLowerCase()
    .normalize("NFC")
    .replace(/qu/g, "q")
    .replace(/gu(?=[eiéèêîy])/g, "g")
    .match(nucleus)?.length ?? 0;

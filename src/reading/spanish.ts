/**
 * Vowels that are spoken together, by the spelling alone: an i or u without accent joins an open vowel or the other of
 * them, with accent only the other; two open vowels part. Source: RAE, Ortografía de la lengua española (2010), II.3.2.
 */
const nucleus = /[iuüy]?[aeoáéó][iuüy]?|[iuü][íú]|[iuü][iuüy]|[íú]|[iuüy]/gu;

/** The syllables of a Spanish word. An h between vowels changes nothing; the u of que, qui, gue and gui is not spoken. */
export function spanishSyllables(word: string): number {
  const spoken = word
    .toLowerCase()
    .normalize("NFC")
    .replace(/qu/g, "q")
    .replace(/gu(?=[eiéí])/g, "g")
    .replace(/h/g, "")
    .replace(/y(?=[aeiouáéíóúü])/g, "j");
  return spoken.match(nucleus)?.length ?? 0;
}

/**
 * The falling diphthongs of Portuguese, oral and nasal; other vowels side by side part: "di-a", "sa-ú-de" (Cunha and Cintra,
 * Nova gramática, 3.5; from memory).
 */
const nucleus = /ã[eo]|õe|[aeoáéóâêô][iu]|u[i]|i[u]|[aeiouáéíóúâêôãõà]/gu;
const accent = /[áéíóúâêô]/u;

/** The syllables of a Portuguese word. After an accent a last -ia, -io, -ua is one: "his-tó-ria". */
export function portugueseSyllables(word: string): number {
  const spoken = word
    .toLowerCase()
    .normalize("NFC")
    .replace(/([qg])u(?=[aeoiéíáóêâô])/g, "$1");
  const gliding = /[iu][aeo]s?$/u.test(spoken) && accent.test(spoken) ? 1 : 0;
  return (spoken.match(nucleus)?.length ?? 0) - gliding;
}

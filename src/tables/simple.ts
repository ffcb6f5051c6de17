/** A name as it is looked for, lower case, without accents, words parted by one space: "Co-Amoxiclav 500" is "co amoxiclav 500". */
export const simple = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

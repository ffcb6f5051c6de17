/** The row a clinician means by these words: case, spaces and hyphens do not matter. */
export function named<R extends { id: string; aliases?: readonly string[] }>(
  words: string,
  rows: readonly R[],
): R | undefined {
  const slug = words
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/gu, "-");
  return rows.find(({ id, aliases }) => id === slug || aliases?.includes(slug));
}

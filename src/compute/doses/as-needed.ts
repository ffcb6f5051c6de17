/** The most givings in a day that "at most 3 a day" allows; null where it says something else. */
export function readAsNeeded(text: string): number | null {
  const said = text.trim().toLowerCase().replace(/\s+/g, " ");
  const [, most] = /^(?:at most|up to|no more than) (\d{1,2})(?: times)? (?:a|per|each) day$/.exec(said) ?? [];
  return most && Number(most) > 0 ? Number(most) : null;
}

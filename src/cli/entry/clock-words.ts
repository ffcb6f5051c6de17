/** "8", "08:30", "6pm", "6:30 p.m.", "18h" */
export const clockPattern = "(?:[01]?\\d|2[0-3])(?:[:.][0-5]\\d)? ?(?:[ap]\\.?m\\.?|h)?";

/** A time of day as it is said at a desk, "6:30 pm", on a 24-hour clock, "18:30"; null where it is no time. */
export function clockOf(said: string): string | null {
  const [, hour = "", minute = "00", half] =
    /^(\d{1,2})(?:[:.]([0-5]\d))? ?(?:([ap])\.?m\.?|h)?$/i.exec(said.trim()) ?? [];
  if (hour === "" || Number(hour) > 23) return null;
  if (half === undefined) return `${hour.padStart(2, "0")}:${minute}`;
  if (Number(hour) < 1 || Number(hour) > 12) return null;
  const ofDay = (Number(hour) % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  return `${String(ofDay).padStart(2, "0")}:${minute}`;
}

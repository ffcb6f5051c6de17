import { clockOf, clockPattern } from "./clock-words.js";

const stretch = new RegExp(`^(${clockPattern}) ?(?:-|–|to) ?(${clockPattern})$`, "i");
const isPlain = (said: string) => /^\d+$/.test(said);
const isAfternoon = (said: string) => /p\.?m/i.test(said);

/**
 * Opening hours as they are said at a desk, "8am-6pm", "8-12, 14-18", as a profile has them: "08:00-18:00". What could be read
 * in two ways, "8-6" or "2-6", stays as it was typed, for the profile to refuse.
 */
export function hoursLine(typed: string): string {
  if (/^closed$/i.test(typed.trim())) return "closed";
  const stretches = typed.split(/,|&|\band\b/).map((part) => stretchOf(part.trim()));
  return stretches.includes(null) ? typed : stretches.join(", ");
}

function stretchOf(part: string): string | null {
  const [, from = "", to = ""] = stretch.exec(part) ?? [];
  const [open, close] = [clockOf(from), clockOf(to)];
  if (open === null || close === null) return null;
  if (isPlain(from) && Number(from) < 6) return null;
  // 10-11pm: from ten in the morning, or in the evening?
  const asEvening = `${Number(from) + 12}:00`;
  if (isPlain(from) && isAfternoon(to) && asEvening < close) return null;
  return open < close ? `${open}-${close}` : null;
}

import { clockOf, clockPattern } from "./clock-words.js";

const stretch = new RegExp(`^(${clockPattern}) ?(?:-|–|to|till?|until) ?(${clockPattern})$`, "i");
/** Without a half of the day, and not on a 24-hour clock. */
const isPlain = (said: string) => /^[1-9]\d?(?:[:.]\d\d)?$/.test(said) && Number.parseInt(said, 10) <= 12;
const isMorning = (said: string) => isPlain(said) || /a\.?m/i.test(said);
const isAfternoon = (said: string) => /p\.?m/i.test(said);

/**
 * Opening hours as they are said at a desk, "8am-6pm", "9-1, 2-6.30", as a profile has them: "08:00-18:00". What could be read
 * in two ways, "2-6" alone or "1-5pm", stays as it was typed, for the profile to refuse.
 */
export function hoursLine(typed: string): string {
  if (/^closed$/i.test(typed.trim())) return "closed";
  const stretches: string[] = [];
  for (const part of typed.replace(/\b(?:12 ?)?noon\b/gi, "12pm").split(/,|&|\band\b/)) {
    const read = stretchOf(part.trim(), stretches.at(-1)?.slice(-5) ?? null);
    if (read === null) return typed;
    stretches.push(read);
  }
  return stretches.join(", ");
}

/** after: when the stretch before it ends. */
function stretchOf(part: string, after: string | null): string | null {
  const [, from = "", to = ""] = stretch.exec(part) ?? [];
  const [open, close] = [clockOf(from), clockOf(to)];
  if (open === null || close === null) return null;
  if (after !== null && isPlain(from) && open < after)
    return rising(later(open), isPlain(to) && close < after ? later(close) : close);
  if (isPlain(from) && Number.parseInt(from, 10) < 6) return null;
  // 10-11pm: from ten in the morning, or in the evening? But nobody opens at 8 and closes at 6 of the same morning.
  if (isPlain(from) && isAfternoon(to) && later(open) < close) return null;
  return rising(open, isMorning(from) && isPlain(to) && close <= open ? later(close) : close);
}

const later = (clock: string): string => `${String(Number(clock.slice(0, 2)) + 12).padStart(2, "0")}${clock.slice(2)}`;
const rising = (open: string, close: string): string | null =>
  open < close && close <= "23:59" ? `${open}-${close}` : null;

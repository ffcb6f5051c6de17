/** How often. by "hours": evenly round the clock; by "times": so many times while people are up. at: where only one will do. */
export type Every = { hours: number; by: "hours" | "times"; at: "morning" | "evening" | null };

const hours = [4, 6, 8, 12, 24, 48, 72];
const numbers: Record<string, number> = { once: 1, twice: 2, three: 3, four: 4 };
const abbreviations: Record<string, number> = { sid: 1, bid: 2, tid: 3, qid: 4 };

/**
 * Reads "12 h", "every 8 hours", "q24h", "once a day", "twice daily", "3 times a day", "every morning", "every other day",
 * "every 3 days", "once a week". Null for anything else.
 */
export function readEvery(text: string): Every | null {
  const said = text.trim().toLowerCase().replace(/\s+/g, " ");

  const [, inHours] = /^(?:every |q ?)?(\d{1,3}) ?(?:h|hr|hrs|hour|hours)$/.exec(said) ?? [];
  if (inHours) return hours.includes(Number(inHours)) ? { hours: Number(inHours), by: "hours", at: null } : null;

  const [, part] = /^(?:every|each|once every) (morning|evening|night)$/.exec(said) ?? [];
  if (part) return { hours: 24, by: "times", at: part === "morning" ? "morning" : "evening" };

  if (/^(?:daily|every day)$/.test(said)) return times(1);
  const [, count = ""] =
    /^(\d|once|twice|three|four)(?: times?)? (?:a|per|each|every)? ?(?:day|daily)$/.exec(said) ?? [];
  if (count) return times(numbers[count] ?? Number(count));
  const abbreviated = abbreviations[said];
  if (abbreviated) return times(abbreviated);

  if (said === "every other day") return days(2);
  const [, inDays] = /^every ([2-7]) days$/.exec(said) ?? [];
  if (inDays) return days(Number(inDays));
  return /^(?:once a week|weekly|every week)$/.test(said) ? days(7) : null;
}

const days = (count: number): Every => ({ hours: 24 * count, by: "times", at: null });
const times = (count: number): Every | null =>
  count >= 1 && count <= 4 ? { hours: 24 / count, by: "times", at: null } : null;

/** The time of day somewhere, "16:30". zone: its IANA name. */
export const clockIn = (zone: string, now: Date): string =>
  new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(
    now,
  );

/** The day somewhere, "2026-03-04". zone: its IANA name. */
export const dayIn = (zone: string, now: Date): string =>
  new Intl.DateTimeFormat("en-CA", { timeZone: zone, year: "numeric", month: "2-digit", day: "2-digit" }).format(now);

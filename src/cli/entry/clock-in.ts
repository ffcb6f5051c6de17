/** The time of day somewhere, "16:30". zone: its IANA name. */
export const clockIn = (zone: string, now: Date): string =>
  new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(
    now,
  );

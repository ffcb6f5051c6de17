import { expect, test } from "vitest";
import { readAsNeeded } from "#compute/doses/as-needed.js";
import { readEvery } from "#compute/doses/every.js";

test.each([
  ["12 h", 12],
  ["12h", 12],
  ["every 8 hours", 8],
  ["q24h", 24],
  ["24 h", 24],
  ["once a day", 24],
  ["Once daily", 24],
  ["daily", 24],
  ["every day", 24],
  ["twice a day", 12],
  ["2 times a day", 12],
  ["3 times a day", 8],
  ["three times a day", 8],
  ["4 times per day", 6],
  ["BID", 12],
  ["every morning", 24],
  ["every night", 24],
  ["every other day", 48],
  ["48 h", 48],
  ["every 3 days", 72],
  ["once a week", 168],
])("%s is every %i h", (text, hours) => expect(readEvery(text)?.hours).toBe(hours));

test.each([
  "",
  "12",
  "120 h",
  "10 h",
  "0 h",
  "1.2 h",
  "7 times a day",
  "0 times a day",
  "often",
  "twice",
  "every 12",
  "12 h 12 h",
])("%j is not understood", (text) => expect(readEvery(text)).toBeNull());

test("every evening is the evening", () => expect(readEvery("every evening")?.at).toBe("evening"));

test.each([
  ["at most 3 a day", 3],
  ["up to 2 times a day", 2],
  ["at most 0 a day", null],
  ["3", null],
  ["at most three", null],
])("as needed %j", (text, most) => expect(readAsNeeded(text)).toBe(most));

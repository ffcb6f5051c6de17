import { problem } from "#problems/problem.js";
import type { Clock } from "../../facts.js";
import type { Cursor } from "./cursor.js";

/** A time of day on a 24-hour clock, "08:00". */
export function takeBound(cursor: Cursor): Clock {
  const token = cursor.peek();
  if (token?.kind !== "clock") return cursor.lost("08:00", "15:30");
  const start = cursor.position();
  cursor.moveTo(start + 1);
  const { text: given, at } = cursor.said(start, null);
  if (token.text > "23:59" || token.text.slice(3) > "59") cursor.fail(problem("time-unreadable", at, { given }));
  return token.text;
}

import type { Chart, Dose } from "../facts.js";
import { dayAfter, dayOf } from "./clock.js";

/** Day by time: every dose once, in the column of its medicine and time of day; null where there is nothing to give. */
export function chartOf(doses: readonly Dose[]): Chart | null {
  const times = doses.map(({ at }) => at).sort();
  const [first] = times;
  const last = times.at(-1);
  if (first === undefined || last === undefined) return null;

  const columns = new Map(
    doses.map((dose) => [column(dose), { medicine: dose.medicine, at: dose.slot, part: dose.part }]),
  );
  const inOrder = [...columns].sort(([, a], [, b]) => a.at.localeCompare(b.at));
  const cells = new Map(doses.map((dose) => [`${dayOf(dose.at)} ${column(dose)}`, dose]));
  const rows: Chart["rows"] = [];
  for (let day = dayOf(first); day <= dayOf(last); day = dayAfter(day, 1))
    rows.push({ day, cells: inOrder.map(([key]) => cells.get(`${day} ${key}`) ?? null) });
  return { columns: inOrder.map(([, shown]) => shown), rows };
}

const column = ({ medicine, slot }: Dose) => `${slot} ${medicine}`;

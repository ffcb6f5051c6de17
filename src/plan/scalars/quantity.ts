import { type Fault, scalar } from "./scalar.js";

const shape = /^([+-]?\d+(?:[.,]\d+)?)\s*(.*)$/u;

export type Quantity<U extends string = string> = { value: string; unit: U };

/** Reads "24.6 kg" into {value: "24.6", unit: "kg"}. units: what may be written -> the unit it stands for. */
export function readQuantity<U extends string>(text: string, units: Record<string, U>): Quantity<U> | Fault {
  const [, number, unit] = shape.exec(text) ?? [];
  const known = [...new Set(Object.values(units))];
  if (number === undefined || unit === undefined) return { fault: "number-unreadable", values: { given: text } };
  if (number.includes(",")) return { fault: "number-unreadable", values: { given: number }, length: number.length };
  if (Number(number) <= 0 || number.startsWith("-"))
    return { fault: "number-not-positive", values: { given: number }, length: number.length };
  if (!unit) return { fault: "unit-missing", values: { given: number, units: known } };
  const meant = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (!meant)
    return {
      fault: "unit-unknown",
      values: { given: unit, units: known },
      offset: text.length - unit.length,
      length: unit.length,
    };
  return { value: number.replace(/^\+/, ""), unit: meant };
}

/** A number with its unit; the unit is never guessed. */
export const quantity = <U extends string>(title: string, units: Record<string, U>, ...examples: string[]) =>
  scalar({ title, description: `A number and one of: ${Object.keys(units).join(", ")}`, examples }, (text) =>
    readQuantity(text, units),
  );

const same = <U extends string>(...units: U[]) => Object.fromEntries(units.map((u) => [u, u])) as Record<U, U>;

export const weight = quantity("Body weight", same("kg", "lb"), "24.6 kg", "54 lb");
export const length = quantity("Length", { cm: "cm", mm: "mm", in: "in" }, "41 cm", "16 in");
export const days = quantity("How many days", { day: "day", days: "day", week: "week", weeks: "week" }, "10 days");
export const minutes = quantity("How long", { min: "min", minutes: "min", h: "h", hour: "h", hours: "h" }, "30 min");

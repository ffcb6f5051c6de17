import { type Entry, modeline, newFile } from "#index.js";
import type { ClinicAnswers } from "./answers.js";
import { paperOf } from "./country.js";
import type { Remark } from "./plan-draft.js";

const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday"];

/**
 * The profile in YAML. What many clinics add is shown as it is written, in comments. holidays: those of its country are known,
 * and close it.
 */
export function clinicDraft(answers: ClinicAnswers, schema: string | null, remark: Remark, holidays: boolean): string {
  const { weekdays: hours = "", saturday = "closed", sunday = "closed" } = answers;
  const shown = (name: string, ...lines: string[]): Entry => ({ comment: [remark(name), ...lines].join("\n") });
  const country = answers.country ?? "";
  return newFile([
    { comment: schema === null ? undefined : modeline(schema) },
    { field: "name", value: answers.name ?? "", comment: remark("profile") },
    { field: "address", value: answers.address ?? [] },
    { field: "phone", value: answers.phone ?? "" },
    ...(answers.email ? [{ field: "email", value: answers.email }] : []),
    {
      field: "after hours",
      value: {
        name: answers.afterName ?? "",
        phone: answers.afterPhone ?? "",
        ...(answers.afterAddress ? { address: answers.afterAddress } : {}),
      },
      comment: remark("after"),
    },
    { field: "time zone", value: answers.zone ?? "" },
    { field: "country", value: country },
    { field: "language", value: answers.language ?? "" },
    { field: "currency", value: answers.currency ?? "" },
    { field: "paper", value: paperOf(country) },
    {
      field: "hours",
      value: Object.fromEntries([...weekdays.map((day) => [day, hours]), ["saturday", saturday], ["sunday", sunday]]),
      comment: remark("hours"),
    },
    holidays
      ? { field: "holidays", value: { country }, comment: remark("public-holidays") }
      : shown("holidays", `holidays: {country: ${country || "US"}}`),
    shown("household", "household: {morning: 08:00, evening: 20:00}"),
    shown("money", "prices:", "  - {item: bandage change, price: 48.00, per: visit, visit: bandage change}"),
    shown("stock", "collars:", "  - {size: M, depth: 20 cm, neck: {from: 31 cm, to: 40 cm}}"),
  ]);
}

import { readFileSync } from "node:fs";
import { computeDoses } from "#compute/doses/doses.js";
import type { Plan, PlannedMedicine } from "#plan/plan.js";
import { readPlan } from "#plan/read-plan.js";
import type { Places } from "#problems/place.js";
import type { Code } from "#problems/problem.js";
import { readMedicines } from "#tables/medicines.js";

const read = (path: string) => readFileSync(path, "utf8");
const bytes = (path: string) => ({ file: path, bytes: readFileSync(path) });

const opened = readMedicines(read("shared/medicines.json"), "shared/medicines.json");
if (!opened.value) throw new Error(JSON.stringify(opened.problems));
export const medicines = opened.value;
export const table = medicines.rows;

export function example(name: string): Plan {
  const plan = bytes(`examples/${name}/plan.yaml`);
  const [clinic, prices] = [bytes("examples/clinic.yaml"), bytes("examples/prices.yaml")];
  const { value, problems } = readPlan({ plan, clinic, prices }, { today: "2026-03-02" });
  if (!value) throw new Error(JSON.stringify(problems));
  return value;
}

const dog = example("dog-cheek-abscess");

export type Written = Partial<PlannedMedicine> & { name: string };
export type Setting = Partial<Plan["patient"]> & { discharged?: string; zone?: string; household?: Plan["household"] };

type One<U> = U extends `${infer S}s` ? S : U;

/** A quantity as a plan holds it, in the singular. */
export const q = <U extends string>(text: `${number} ${U}`): { value: string; unit: One<U> } => {
  const [value = "", unit = ""] = text.split(" ");
  return { value, unit: unit.replace(/s$/, "") as One<U> };
};

/** The example's dog, 24.6 kg, discharged on 2026-03-02 at 16:30, with other medicines; twelve-hourly for a week unless said. */
export function planWith(medicines: Written[], { discharged, zone, household, ...patient }: Setting = {}): Plan {
  return {
    ...dog,
    discharged: discharged ?? dog.discharged,
    ...(household ? { household } : {}),
    clinic: { ...dog.clinic, "time zone": zone ?? dog.clinic["time zone"] },
    patient: { ...dog.patient, ...patient },
    medicines: medicines.map((written) => ({
      "last given": "16:00",
      for: q("7 days"),
      ...written,
      route: written.route ?? "mouth",
      every: written.every ?? "12 h",
      next: written.next ?? [],
    })),
  };
}

export const doses = (written: Written[], setting: Setting = {}) => computeDoses(planWith(written, setting), medicines);

export function codes(medicines: Written[], setting: Setting = {}): string[] {
  return doses(medicines, setting).problems.map(({ code }) => code);
}

/** Every path of a plan, as the file of a place. */
const paths = new Proxy<Places>({}, { get: (_, path) => ({ file: String(path), line: 1, column: 1, length: 1 }) });

/** What is told with this code: its values, and at which field of the medicines ("0/dose", "0/next/1/for"). */
export function told(code: Code, written: Written | Written[], setting: Setting = {}): Record<string, unknown>[] {
  const plan = { ...planWith([written].flat(), setting), places: paths };
  return computeDoses(plan, medicines).problems.flatMap((one) =>
    one.code === code ? [{ at: one.at.file.replace("medicines/", ""), ...one.values }] : [],
  );
}

/** The only medicine that comes out. */
export function only(medicine: Written, setting: Setting = {}) {
  const { value, problems } = doses([medicine], setting);
  const [first] = value?.medicines ?? [];
  if (!first) throw new Error(JSON.stringify(problems));
  return first;
}

import type { Amount } from "../facts.js";
import type { Exact } from "./exact.js";

/** What the medicine is made up as. */
export type Form = {
  kind: "tablet" | "capsule" | "liquid" | "drops" | "ointment" | "spray" | "patch" | "insulin";
  /** What is counted when it is given, and the least of it that can be measured out. */
  unit: string;
  step: Exact;
  /** As it stands on the box, "375 mg" or "50 mg/mL"; null where the plan has only words for it. */
  strength: Amount | null;
  /** What a unit of it holds, "375 mg" or "50 mg". */
  holds: Amount | null;
  /** What it goes home in where what is given is not counted out: a bottle of drops. Null of what is. */
  container: "bottle" | "tube" | "vial" | null;
};

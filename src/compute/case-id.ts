import { createHash } from "node:crypto";
import type { Plan } from "#plan/plan.js";

const shortHash = (whose: unknown): string =>
  createHash("sha256").update(JSON.stringify(whose)).digest("hex").slice(0, 16);

/** The clinic's own number, or one that follows from whose case it is and when it began: a revision keeps it. */
export const caseNumber = (plan: Plan): string =>
  plan.case ?? shortHash([plan.patient.name, plan.owner.name, plan.discharged]);

/** Tells one clinic's case from all others, and names nobody. */
export const caseId = (plan: Plan): string => shortHash([plan.clinic.name, caseNumber(plan)]);

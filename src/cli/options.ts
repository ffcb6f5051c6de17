import { Option } from "commander";
import { format } from "date-fns/format";
import type { Format, RenderOptions } from "#index.js";
import type { Reason } from "#problems/settle.js";
import { allowArgument, dayArgument } from "./arguments.js";

/** What check and build have in common. */
export type PlanOptions = { allow: Reason[]; today: string; json?: boolean };

export type CheckOptions = PlanOptions & { reading?: boolean };

export type BuildOptions = PlanOptions & {
  case?: string;
  out: string;
  language: string[];
  format: Format[];
  paper?: RenderOptions["paper"];
  only?: "estimate" | "first-page";
  largePrint?: boolean;
  watch?: boolean;
  jobs?: number;
  resume?: boolean;
  open?: boolean;
  staffLanguage?: boolean;
  proof?: boolean;
};

export type SendOptions = {
  smtp?: string;
  dryRun?: boolean;
  yes?: boolean;
  tries: number;
  wait: number;
  timeout: number;
  unsure: "leave" | "resend";
  ledger?: string;
  case: string[];
  json?: boolean;
};

export type HistoryOptions = { on?: string; json?: boolean };

/** clinic: the folder of its profile. */
export type LanguagesOptions = { clinic: string; review?: string[]; by?: string; today: string; json?: boolean };

type Several = string[];

/** What was entered by flags, before it is read. */
export type ReviseFlags = Partial<
  Record<
    | "at"
    | "discharge"
    | "smell"
    | "bandage"
    | "pain"
    | "reason"
    | "decided"
    | "every"
    | "collarUntil"
    | "weight"
    | "charged"
    | "paid",
    string
  > &
    Record<"visit" | "tissue" | "did" | "course" | "booked" | "left" | "stop" | "medicine" | "chargedOn", Several>
>;
export type ReviseOptions = PlanOptions & ReviseFlags & { from?: string; case?: string };

/** What was said of a new plan by flags. medicine, item: a line each. */
export type NewOptions = Partial<
  Record<
    | "clinic"
    | "species"
    | "sex"
    | "name"
    | "weight"
    | "owner"
    | "language"
    | "email"
    | "topic"
    | "site"
    | "bandage"
    | "reason"
    | "collar"
    | "paid"
    | "clinician"
    | "discharged",
    string
  > &
    Record<"course" | "medicine" | "item", Several>
> & { allow: Reason[]; today?: string; json?: boolean };

/** What was said of a new clinic profile by flags. */
export type NewClinicOptions = Partial<
  Record<
    | "name"
    | "phone"
    | "email"
    | "afterName"
    | "afterPhone"
    | "country"
    | "zone"
    | "currency"
    | "language"
    | "weekdays"
    | "saturday"
    | "sunday",
    string
  >
> & { address?: Several; afterAddress?: Several; json?: boolean };

export const allowOption = (): Option =>
  new Option(
    "--allow <CODE[:FOR]=reason>",
    "go on where a problem marked ask has this code (FOR: what it is given for, as printed); repeatable, kept in the record",
  )
    .argParser(allowArgument)
    .default([], "none");

export const planOptions = (): Option[] => [
  allowOption(),
  new Option("--today <day>", "read the plan as on this day, YYYY-MM-DD")
    .argParser(dayArgument)
    .default(format(new Date(), "yyyy-MM-dd"), "the day on this machine's clock"),
  new Option("--json", "problems and results as JSON Lines"),
];

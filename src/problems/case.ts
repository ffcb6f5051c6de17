import { note, stop } from "./kind.js";

type OneDay = { day: string };
/** A paper of a case: its revision and the day it was made on. */
type Paper = { revision: number; day: OneDay };

/** The folder in which a case is kept: what happened in it, and whether it is still as it was. Only sending names an owner. */
export const caseKinds = {
  "case-missing": stop<{ path: string }>(),
  "case-unusable": stop<{ path: string; detail: string }>(),
  "case-journal-edited": stop<{ path: string; line: number }>(),
  "case-other": stop<{ path: string }>(),
  "case-kept-missing": stop<{ path: string; name: string }>(),
  "case-kept-changed": stop<{ path: string; name: string }>(),

  "history-built": note<Paper & { files: string; languages: string }>(),
  "history-visited": note<Paper>(),
  "history-sent": note<Paper & { to: string; language: string }>(),
  "history-in-force": note<Paper & { asked: OneDay; languages: string }>(),
  "history-nothing": note<{ asked: OneDay }>(),

  "verify-same": note<Paper & { files: number }>(),
  "verify-differs": stop<Paper & { files: string; changed: string }>(),
  "verify-stopped": stop<Paper & { codes: string; changed: string }>(),
  "verify-source-edited": stop<{ path: string; context: string }>(),
  "verify-source-gone": stop<{ path: string; context: string }>(),
  "verify-done": note<{ papers: number; wrong: number }>(),
};

import type { Block, Inline } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";

/** Rules to sign on: the owner, the clinician, the day and the time. */
export function signaturesOn(page: Page): Block {
  const { owner, clinician } = page.view;
  const line = (key: string, values?: Record<string, string>): Inline[] => [
    { kind: "text", text: plainOn(page, `handout:sign.${key}`, values) },
  ];
  return {
    kind: "signature",
    lines: [
      line("owner", { owner: owner.name }),
      clinician === null ? line("clinician-unnamed") : line("clinician", { clinician }),
      line("when"),
    ],
  };
}

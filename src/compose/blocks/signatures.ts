import type { Block, Inline } from "#handout/handout.js";
import { type Page, plainOn } from "../page.js";

/** Rules to sign on: the owner, the clinician and who else signs for the clinic, the day and the time. */
export function signaturesOn(page: Page): Block {
  const { owner, clinician, clinic } = page.view;
  const signing = [...new Set([...(clinician === null ? [] : [clinician]), ...clinic.signOff])];
  const line = (key: string, values?: Record<string, string>): Inline[] => [
    { kind: "text", text: plainOn(page, `handout:sign.${key}`, values) },
  ];
  return {
    kind: "signature",
    lines: [
      line("owner", { owner: owner.name }),
      ...(signing.length === 0
        ? [line("clinician-unnamed")]
        : signing.map((clinician) => line("clinician", { clinician }))),
      line("when"),
    ],
  };
}

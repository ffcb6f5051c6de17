import { createHash } from "node:crypto";
import type { Facts } from "#compute/facts.js";
import type { Letter, LetterPart } from "#handout/handout.js";
import { sectionsOn } from "./held.js";
import { type Page, plainOn } from "./page.js";
import type { Templates } from "./templates.js";

/** The letter a handout is sent with, in its language and, where staff is a page of its own, under it in the staff's. */
export function letterOf(page: Page, staff: Page | null, templates: Templates): Letter {
  const { view, voice } = page;
  const { owner, clinic, revision } = view;
  return {
    to: owner.email === null ? null : { name: owner.name, address: owner.email },
    from: clinic.email === null ? null : { name: clinic.name, address: clinic.email },
    subject: plainOn(page, "handout:subject", { clinic: clinic.name }),
    id: idOf(view, voice.language, revision),
    replaces: Array.from({ length: revision }, (_, earlier) => idOf(view, voice.language, earlier)),
    parts: [partOf(page, false, templates), ...(staff ? [partOf(staff, true, templates)] : [])],
  };
}

function partOf(page: Page, staff: boolean, templates: Templates): LetterPart {
  const lead = staff ? [{ kind: "text" as const, text: plainOn(page, "letter:for-staff") }] : [];
  const sections = sectionsOn(page, templates, "letter");
  return { language: page.voice.language, direction: page.voice.direction, lead, sections };
}

/** What it says is no part of it: a reprint is the same letter, and no owner needs two. It names nobody. */
const idOf = ({ caseId, owner }: Facts, language: string, revision: number): string =>
  createHash("sha256")
    .update(JSON.stringify([caseId, owner.email, language, revision]))
    .digest("hex");

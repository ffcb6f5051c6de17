import type { Handout } from "#handout/handout.js";
import { sectionsOn } from "./held.js";
import { type Page, plainOn } from "./page.js";
import type { Templates } from "./templates.js";

/** What stands on the container of each medicine (21 CFR 530.12; 22 TAC 573.40; RCVS FAQ on the labels of cascade medicines). */
export const labelsOn = (page: Page, templates: Templates): NonNullable<Handout["labels"]> => ({
  title: plainOn(page, "labels:title"),
  sections: sectionsOn(page, templates, "labels"),
});

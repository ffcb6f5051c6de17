import type { Medicine } from "#compute/facts.js";
import type { Block } from "#handout/handout.js";
import { chartOn } from "../blocks/chart.js";
import { costsOn } from "../blocks/costs.js";
import { homeLogOn } from "../blocks/home-log.js";
import { monthsOn } from "../blocks/months.js";
import { neededLogOn } from "../blocks/needed-log.js";
import { signaturesOn } from "../blocks/signatures.js";
import { visitTableOn } from "../blocks/visits.js";
import { bandageWatchOn } from "../figures/bandage-watch.js";
import { breathsOn } from "../figures/breaths.js";
import { collarFitOn } from "../figures/collar-fit.js";
import { costBarOn, costByDateOn } from "../figures/cost-by-date.js";
import { courseStripOn } from "../figures/course-strip.js";
import { visitCodeOn } from "../figures/visit-code.js";
import { warmCompressOn } from "../figures/warm-compress.js";
import { woundPlaceOn } from "../figures/wound-place.js";
import { Fragment } from "../holes.js";
import type { Page } from "../page.js";
import type { Helper } from "./helper.js";

/** A helper that stands for whole blocks, drawn from facts of the page; for none where there is nothing to draw. */
const drawn =
  (draw: (page: Page, given: unknown) => Block[] | Block | null): Helper =>
  (page, [given]) => {
    const blocks = [draw(page, given) ?? []].flat();
    return new Fragment(blocks.map((block) => page.holes.block(block).markdown).join(""));
  };

export const blockHelpers = {
  /** The visits, the firm ones first. */
  visitTable: drawn(visitTableOn),
  /** The next booked visit for a phone's camera. */
  visitCode: drawn(visitCodeOn),
  /** A grid for each month of the course. */
  monthGrids: drawn(monthsOn),
  /** The course as a row of days. */
  courseStrip: drawn(courseStripOn),
  /** The chart of doses to tick. */
  doseChart: drawn((page) => page.view.chart && chartOn(page, page.view.chart)),
  /** {{neededLog medicine}}: where to note what is given only as needed. */
  neededLog: drawn((page, medicine) => neededLogOn(page, medicine as Medicine)),
  /** The log to fill in day by day. */
  homeLog: drawn(homeLogOn),
  /** The table of the estimate. */
  costTable: drawn((page) => page.view.estimate && costsOn(page, page.view.estimate)),
  /** The whole cost as a bar from low to high with what is paid, and such a bar for each of several days. */
  costBar: drawn((page) => page.view.estimate && costBarOn(page, page.view.estimate)),
  costDays: drawn((page) => page.view.estimate && costByDateOn(page, page.view.estimate)),
  /** Where it is sore. */
  woundPlace: drawn(woundPlaceOn),
  /** How to do what must be done, and how to tell that a bandage is well: the drawings this case needs. */
  howTo: drawn((page) => [warmCompressOn(page) ?? [], breathsOn(page) ?? [], bandageWatchOn(page) ?? []].flat()),
  /** How the collar must sit. */
  collarFit: drawn((page) => page.view.collar && collarFitOn(page, page.view.collar)),
  /** Lines to sign on. */
  signatureLines: drawn(signaturesOn),
};

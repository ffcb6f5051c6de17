import fc from "fast-check";

/**
 * Every run of the tests draws the same random cases, so that a check of a change tells of the change alone. Other cases:
 * HEARTHSHEET_SEED=7, or HEARTHSHEET_SEED=any for new ones at every run.
 */
const seed = process.env["HEARTHSHEET_SEED"] ?? "20260302";
if (seed !== "any") fc.configureGlobal({ seed: Number(seed) });

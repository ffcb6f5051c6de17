import type { Letter } from "#handout/handout.js";

/** A letter with nothing of interest in it, for handouts that are not about letters. */
export const plainLetter: Letter = {
  to: { name: "Lucía Ferrer", address: "lucia.ferrer@example.org" },
  from: { name: "Juniper Row Animal Clinic", address: "desk@juniper-row.example.org" },
  subject: "Bramble: care at home",
  id: "0f".repeat(32),
  replaces: [],
  parts: [
    {
      language: "es",
      direction: "ltr",
      lead: [],
      sections: [{ kind: "section", id: "letter", level: 2, weight: "plain", title: [], blocks: [] }],
    },
  ],
};

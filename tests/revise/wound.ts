/**
 * The story of the dog's cheek, worked by hand with the calendar of March 2026 (the 1st is a Sunday, and the clinic is closed on
 * Sundays). Discharged on Monday the 2nd at 16:30; seven visits, one of them the closure.
 *
 * Dates. next is the first day on which a visit may fall, last the last one. Until day 14 is 16 March. Closure on day 7-14 is
 * 9-16 March: after the change of the 10th it may be on the 11th, a day before the next change is due. Sutures out 10-14 days
 * after the 12th is 22-26 March, and the 22nd is a Sunday: 23-26. The collar stays on until the bandage is off, then until the
 * sutures are out.
 *
 * Doses. Amoxicillin-clavulanate 375 mg, one tablet every 12 h, 14 doses from 2 March 20:00, the last on 9 March 08:00: still to
 * come after the visits of the 3rd (two given) 12, the 4th 10, the 5th 8, the 7th at 10:00 4, the 10th none. Carprofen 100 mg,
 * one tablet at 08:00, 4 doses from 3 March: 3, 2, 1, none. On the 5th nine tablets of the first are counted, one more than is
 * needed: nine in the house, and on the 7th, four doses later, five.
 *
 * Money. The first day: 310.00 + 71.40 of medicines + 18.50 and 6.25 % of it, 1.15625, so 19.66 = 401.06; said on the 4th. Each
 * change is priced at 48.00. That of the 3rd is said on the 5th: with sedation it came to 125.50. That of the 7th is said on the
 * 10th: 48.00. The closure came to 290.00; taking out sutures has no price and was not charged.
 *   charged: 0; 401.06 + 48.00 = 449.06; + 125.50 + 48.00 = 622.56; 622.56; + 48.00 + 48.00 = 718.56; + 290.00 = 1008.56.
 *   open: 401.06 + 48.00 = 449.06 of the 2nd and 3rd; 48.00 of the 3rd; nothing; 48.00 of the 7th; nothing.
 *   paid: 150.00 + 48.00 at each of five changes + 290.00 = 680.00.
 * The whole, at least: what is charged or open and the fewest changes still to come. At most: with the most changes, sedation
 * (3 x 90.00 = 270.00) and closure (320.00).
 *   3rd: 449.06 + 3 x 48.00 = 593.06; 449.06 + 8 x 48.00 + 590.00 = 1423.06. 4th: 497.06 + 2 x 48.00; + 7 x 48.00 + 590.00.
 *   5th: 622.56 + 48.00 (the 7th, closed on the 9th) = 670.56; 622.56 + 5 x 48.00 (7, 9, 11, 13, 16) + 590.00 = 1452.56.
 *   7th: 670.56, closed on the 9th; 670.56 + 4 x 48.00 + 590.00 = 1452.56. 10th: 718.56; + 3 x 48.00 (12, 14, 16) + 590.00.
 *   12th: 1008.56, and 270.00 more if sedation is needed. 23rd: 1008.56, and nothing can come any more.
 */
export const visits = [
  {
    entered: { at: "2026-03-03 09:30", visit: ["change"], decided: "continue", paid: "48.00" },
    next: "2026-03-04",
    last: "2026-03-16",
    collar: "bandage-off",
    doses: { "amoxicillin-clavulanate": [12, "12"], carprofen: [3, "3"] },
    money: { charged: 0, open: 44906, days: ["2026-03-02", "2026-03-03"], paid: 19800, whole: [59306, 142306] },
  },
  {
    entered: {
      at: "2026-03-04 09:30",
      visit: ["change"],
      decided: "continue",
      charged: "48.00",
      "charged on": { "2026-03-02": "401.06" },
      paid: "48.00",
    },
    next: "2026-03-05",
    last: "2026-03-16",
    collar: "bandage-off",
    doses: { "amoxicillin-clavulanate": [10, "10"], carprofen: [2, "2"] },
    money: { charged: 44906, open: 4800, days: ["2026-03-03"], paid: 24600, whole: [59306, 142306] },
  },
  {
    entered: {
      at: "2026-03-05 09:30",
      visit: ["change"],
      decided: "stretch",
      charged: "48.00",
      "charged on": { "2026-03-03": "125.50" },
      paid: "48.00",
      left: { "amoxicillin-clavulanate": "9 tablets" },
    },
    next: "2026-03-07",
    last: "2026-03-16",
    collar: "bandage-off",
    doses: { "amoxicillin-clavulanate": [8, "9"], carprofen: [1, "1"] },
    money: { charged: 62256, open: 0, days: [], paid: 29400, whole: [67056, 145256] },
  },
  {
    entered: { at: "2026-03-07 10:00", visit: ["change"], decided: "continue", paid: "48.00" },
    next: "2026-03-09",
    last: "2026-03-16",
    collar: "bandage-off",
    doses: { "amoxicillin-clavulanate": [4, "5"] },
    money: { charged: 62256, open: 4800, days: ["2026-03-07"], paid: 34200, whole: [67056, 145256] },
  },
  {
    entered: {
      at: "2026-03-10 09:30",
      visit: ["change"],
      decided: "continue",
      charged: "48.00",
      "charged on": { "2026-03-07": "48.00" },
      paid: "48.00",
    },
    next: "2026-03-11",
    last: "2026-03-16",
    collar: "bandage-off",
    doses: {},
    money: { charged: 71856, open: 0, days: [], paid: 39000, whole: [71856, 145256] },
  },
  {
    entered: {
      at: "2026-03-12 09:30",
      visit: ["closure"],
      decided: "close",
      charged: "290.00",
      paid: "290.00",
      course: ["sutures out day 10-14"],
      "collar until": "sutures out",
    },
    next: "2026-03-23",
    last: "2026-03-26",
    collar: "sutures-out",
    doses: {},
    money: { charged: 100856, open: 0, days: [], paid: 68000, whole: [100856, 127856] },
  },
  {
    entered: { at: "2026-03-23 09:30", visit: ["sutures out"], decided: "stop", "collar until": "off" },
    next: null,
    last: null,
    collar: null,
    doses: {},
    money: { charged: 100856, open: 0, days: [], paid: 68000, whole: [100856, 100856] },
  },
];

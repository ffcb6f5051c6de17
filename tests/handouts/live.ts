import type { Live, Moment } from "#handout/live.js";

const moment = (day: string, time: string): Moment => ({
  today: `today ${time}`,
  tomorrow: `tomorrow ${time}`,
  later: `${day} ${time}`,
});
const dose = (medicine: string, number: number, at: string) => ({
  id: `dose-${medicine}-${number}`,
  medicine,
  at,
  when: moment(at.slice(0, 10), at.slice(11)),
  text: `${medicine} ${number}`,
});
const window = { today: "March 6 to 7", tomorrow: "March 6 to 7", later: "March 6 to 7" };
const names = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

/** Short words for every sentence a page may choose; a clinic open Monday to Saturday, shut on Tuesday 10 March 2026. */
export const live: Live = {
  key: "hearthsheet case 0",
  known: { from: "2026-03-02", to: "2026-05-15" },
  lastDay: "2026-03-16",
  week: names.map((name, i) => {
    const [open, close] = name === "Sat" ? ["09:00", "13:00"] : ["08:00", "18:00"];
    const next = { today: `Opens today ${open}`, tomorrow: `Opens tomorrow ${open}`, later: `Opens ${name} ${open}` };
    return { weekday: i + 1, open, close, now: `Open now until ${close}`, next };
  }),
  shut: ["2026-03-10"],
  ring: {
    open: { who: "Ring Juniper Row </script><b> Animal Clinic:", e164: "+13125550142", text: "(312) 555-0142" },
    closed: { who: "Ring Lakeside:", e164: "+13125550187", text: "(312) 555-0187" },
  },
  doses: [
    dose("amox", 1, "2026-03-03T08:00"),
    dose("amox", 2, "2026-03-03T20:00"),
    dose("amox", 3, "2026-03-04T08:00"),
    dose("carp", 1, "2026-03-03T08:00"),
    dose("carp", 2, "2026-03-04T08:00"),
  ],
  parts: [
    { from: "05:00", title: "Morning", steps: [{ id: "look", text: "Look at the bandage." }] },
    { from: "11:00", title: "Midday", steps: [] },
    { from: "17:00", title: "Evening", steps: [{ id: "look", text: "Look at the bandage." }] },
    { from: "21:00", title: "Bedtime", steps: [] },
  ],
  visits: [
    { until: "2026-03-07", day: null, when: window, text: "A bandage change. Not booked." },
    { until: "2026-03-03T09:30", day: "2026-03-03", when: moment("2026-03-03", "09:30"), text: "A bandage change." },
  ],
  words: {
    title: "Right now",
    closed: "Closed now",
    unsure: "Unsure",
    over: "Over",
    due: "Due now",
    asked: "Given?",
    missed: "Missed? <!-- Look.",
    nextDose: "Next medicine",
    nextVisit: "Next visit",
    calendar: "Save the visits",
    print: "Print",
    ticks: "Kept here only.",
  },
};

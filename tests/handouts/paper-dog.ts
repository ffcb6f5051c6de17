import type { Block, Cell, DayMark, Handout, Inline, Item, MonthDay, Section } from "#handout/handout.js";
import { plainLetter } from "./letter.js";

/**
 * A realistic sheet, written by hand as the pipeline would make it: an invented dog with a cheek abscess under a tie-over
 * bandage. It holds every kind of node in an ordinary amount, for looking at pages and for the checkers of PDF files.
 */
const from = "plan.yaml:14:11";
const text = (words: string): Inline => ({ kind: "text", text: words });
const strong = (words: string): Inline => ({ kind: "text", text: words, strong: true });
const when = (iso: string, words: string): Inline => ({ kind: "when", iso, text: words, from });
const money = (minor: number): Inline => ({
  kind: "money",
  minor,
  currency: "USD",
  text: `$${(minor / 100).toFixed(2)}`,
  from,
});
const clinicPhone: Inline = { kind: "phone", e164: "+13125550142", text: "(312) 555-0142", from };
const nightPhone: Inline = { kind: "phone", e164: "+13125550187", text: "(312) 555-0187", from };
const says = (id: string, ...inlines: Inline[]): Inline => ({ kind: "statement", id, inlines, from });
const sign = (id: string, words: string, note?: string): Item => ({
  inlines: [says(id, text(words))],
  ...(note ? { note: [text(note)] } : {}),
});
const body = (...inlines: Inline[]): Block => ({ kind: "paragraph", role: "body", inlines });
const lead = (...inlines: Inline[]): Block => ({ kind: "paragraph", role: "lead", inlines });
const small = (...inlines: Inline[]): Block => ({ kind: "paragraph", role: "small", inlines });
const bullets = (...items: Item[]): Block => ({ kind: "list", mark: "bullet", items });
const ticks = (...items: Item[]): Block => ({ kind: "list", mark: "tick", items });
const section = (id: string, title: string, weight: Section["weight"], ...blocks: Section["blocks"]): Section => ({
  kind: "section",
  id,
  level: 2,
  weight,
  title: [text(title)],
  blocks,
});
const part = (id: string, title: string, ...blocks: Section["blocks"]): Section => ({
  ...section(id, title, "plain", ...blocks),
  level: 3,
});
const cell = (align: Cell["align"], ...inlines: Inline[]): Cell => ({ align, inlines });

const weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const legend: DayMark[] = [
  { mark: "discharge", text: "Bramble goes home" },
  { mark: "booked", text: "Visit booked" },
  { mark: "expected", text: "We expect a visit about now" },
  { mark: "possible", text: "A visit may be needed" },
  { mark: "closed", text: "The clinic is closed" },
];
const marksOf = (day: number): DayMark[] => {
  const named = (mark: DayMark["mark"]) => legend.filter((row) => row.mark === mark);
  const weekday = (day + 5) % 7;
  return [
    ...(day === 2 ? named("discharge") : []),
    ...([3, 4, 5].includes(day) ? named("booked") : []),
    ...([9, 12].includes(day) ? named("expected") : []),
    ...([6, 7, 14, 16].includes(day) ? named("possible") : []),
    ...(weekday === 6 ? named("closed") : []),
  ];
};
/** Monday 23 February to Sunday 5 April 2026. */
const days: MonthDay[] = Array.from({ length: 42 }, (_, index) => {
  const date = new Date(Date.UTC(2026, 1, 23 + index));
  const inMonth = date.getUTCMonth() === 2;
  const month = ["February", "March", "April"][date.getUTCMonth() - 1];
  return {
    iso: date.toISOString().slice(0, 10),
    text: String(date.getUTCDate()),
    label: `${weekdays[index % 7]}, ${month} ${date.getUTCDate()}`,
    inMonth,
    marks: inMonth ? marksOf(date.getUTCDate()) : [],
  };
});

const dose = (medicine: string): Inline => ({
  kind: "dose",
  medicine,
  amount: "1",
  unit: "tablet",
  text: "1 tablet",
  from,
});
const tickCell = (day: string, time: string, medicine: string): Cell =>
  cell("center", { kind: "tick", label: `${medicine}, ${day}, ${time}` }, text(" "), dose(medicine));
const chart: Block = {
  kind: "table",
  caption: [text("Tick each dose when it is down")],
  head: [
    cell("start", text("Day")),
    cell("center", strong("amoxicillin-clavulanate"), text(" 8:00 AM")),
    cell("center", strong("carprofen"), text(" 9:00 AM")),
    cell("center", strong("amoxicillin-clavulanate"), text(" 8:00 PM")),
  ],
  rows: ["Tue, Mar 3", "Wed, Mar 4", "Thu, Mar 5", "Fri, Mar 6", "Sat, Mar 7", "Sun, Mar 8", "Mon, Mar 9"].map(
    (day, index) => [
      cell("start", when(`2026-03-0${index + 3}`, day)),
      tickCell(day, "8:00 AM", "amoxicillin-clavulanate"),
      index < 3 ? tickCell(day, "9:00 AM", "carprofen") : cell("center"),
      tickCell(day, "8:00 PM", "amoxicillin-clavulanate"),
    ],
  ),
  foot: [],
};

const costRow = (item: string, count: string, low: number, high: number): Cell[] => [
  cell("start", text(item)),
  cell("center", text(count)),
  cell("end", money(low)),
  cell("end", money(high)),
];
const estimate: Block = {
  kind: "table",
  caption: [text("Estimate, lowest and highest")],
  head: [
    cell("start", text("What")),
    cell("center", text("How many")),
    cell("end", text("Lowest")),
    cell("end", text("Highest")),
  ],
  rows: [
    costRow("Abscess opened and flushed", "1", 31000, 31000),
    costRow("Bandage change", "6 to 10", 28800, 48000),
    costRow("Sedation for a bandage change, if needed", "0 to 2", 0, 18000),
    costRow("Closing the wound, only if we decide to", "0 to 1", 0, 32000),
    costRow("Medicines to take home", "1", 7140, 7140),
    costRow("Cone collar", "1", 1850, 1850),
  ],
  foot: [
    costRow("Sales tax, 6.25 %", "", 116, 116),
    [cell("start", strong("Total")), cell("center"), cell("end", money(68906)), cell("end", money(138106))],
    costRow("Already paid", "", 15000, 15000),
  ],
};

export const paperDog: Handout = {
  language: "en",
  direction: "ltr",
  title: "Bramble goes home",
  subtitle: [text("Dog, spayed female, mixed breed, 24.6 kg. "), text("Case JR-1042.")],
  running: { patient: "Bramble Ferrer", date: "Monday, March 2, 2026", clinic: "Juniper Row Animal Clinic" },
  pageWords: { before: "Page ", between: " of ", after: "", digits: "0123456789" },
  issued: "2026-03-02T16:30",
  zone: "America/Chicago",
  subject: "Bramble: what to do at home",
  clinic: {
    name: "Juniper Row Animal Clinic",
    address: ["18 Juniper Row", "Riverbend, IL 60000"],
    email: null,
  },
  translationNotice: [],
  sections: [
    section(
      "ring",
      "Whom to ring",
      "urgent",
      bullets(
        {
          inlines: [strong("While we are open"), text(" "), clinicPhone],
          note: [
            text("Juniper Row Animal Clinic. Monday to Friday 8:00 AM to 6:00 PM, Saturday 9:00 AM to 1:00 PM. "),
            { kind: "email", address: "desk@juniper-row.example.org", text: "desk@juniper-row.example.org", from },
          ],
        },
        {
          inlines: [strong("At any other hour"), text(" "), nightPhone],
          note: [
            text("Lakeside Animal Emergency Hospital, 400 Harbor Street, Riverbend. Open all night. Ring on your way."),
          ],
        },
      ),
    ),
    section(
      "next",
      "What comes next",
      "urgent",
      lead(
        strong("Tonight: "),
        text("amoxicillin-clavulanate, "),
        dose("amoxicillin-clavulanate"),
        text(" with food "),
        when("2026-03-02T20:00", "at 8:00 PM"),
        text("."),
      ),
      lead(
        strong("Tomorrow: "),
        text("bandage change at the clinic, "),
        when("2026-03-03T09:30", "Tuesday, March 3, 9:30 AM"),
        text(". No breakfast."),
      ),
    ),
    section(
      "go-now",
      "Go now if you see any of these",
      "urgent",
      body(text("Go to the emergency hospital at any hour. Do not wait for us to open.")),
      bullets(
        sign("breathing", "Hard, noisy or very fast breathing, or blue gums."),
        sign(
          "bandage-airway",
          "The bandage slips over the nose or mouth, or pulls tight on the throat.",
          "Ease it clear so Bramble can breathe. Then go.",
        ),
        sign("bleeding", "Blood that does not stop after you press with a clean cloth for 5 minutes."),
        sign("collapse", "Bramble falls and cannot get up, has a fit, or will not wake up."),
        sign("swallowed", "Bramble may have swallowed gauze, tape, thread or a piece of the collar."),
      ),
    ),
    section(
      "done",
      "What we found and did",
      "plain",
      body(
        text("A large abscess on the left cheek. We opened it, washed it out and packed it with damp gauze under "),
        text("a bandage. We put small loops of thread in the skin around the wound. Ties through the loops hold "),
        text("the bandage down. We left the wound open on purpose. It can drain, and it heals from the inside out."),
      ),
      body(text("We cannot know yet how many changes it will take. We look at the wound each time and decide.")),
    ),
    section(
      "today",
      "Ring us the same day",
      "plain",
      bullets(
        sign("bandage-off", "The bandage is loose, has moved or has come off. Do not put it back."),
        sign("bandage-wet", "The bandage is wet or dirty."),
        sign("bandage-smell", "The bandage smells bad."),
        sign("gauze-out", "Gauze hangs out of the wound or has come out. Do not pull it. Do not push it back."),
        sign("not-eating", "Bramble has eaten nothing for 12 hours."),
        sign("vomiting", "Bramble is sick more than once, or has runny poop."),
      ),
    ),
    section(
      "normal",
      "What is normal",
      "plain",
      bullets(
        sign("bandage-feels-odd", "The bandage looks big. Bramble may paw at it or walk in a funny way for 2 days."),
        sign("small-spot", "A small dry spot on the bandage that does not grow."),
        sign("quiet", "Bramble may be quiet and sleep more for 2 days."),
      ),
    ),
    section(
      "home",
      "Care at home",
      "plain",
      part(
        "morning",
        "Each morning",
        ticks(
          sign("wash-hands", "Wash your hands with soap before and after you touch the sore place."),
          sign("check-bandage", "Look at the bandage and smell it. It must be dry, clean and in the same place."),
          sign("photo", "Take a photo from the same spot. Bring the photos to the visit."),
        ),
      ),
      part(
        "evening",
        "Each evening",
        ticks(
          sign("check-ties", "See that each tie and each loop of thread is still in place."),
          sign("clean-bed", "Lay a clean, dry towel on the bed."),
        ),
      ),
      part(
        "not",
        "Do not",
        bullets(
          sign("no-bath", "Do not bathe Bramble, and keep the bandage out of the rain."),
          sign("no-own-medicine", "Give no other pain medicine. People's tablets can kill a dog."),
        ),
      ),
    ),
    section(
      "collar",
      "The collar",
      "plain",
      body(text("Bramble wears a size L cone collar, day and night, until the bandage is off for good.")),
      {
        kind: "figure",
        id: "collar-fit",
        width: 480,
        height: 262,
        shapes: [
          { path: "M104 108L296 34C308 60 308 196 296 222L104 186C98 164 98 130 104 108Z", fill: "pale" },
          { path: "M104 108L296 34M104 186L296 222", fill: "none", stroke: "ink", width: 2.5 },
          { path: "M296 34C308 60 308 196 296 222C284 196 284 60 296 34Z", fill: "none", stroke: "ink", width: 2.5 },
          { path: "M250 119a6 6 0 1 0 12 0a6 6 0 1 0 -12 0Z", fill: "ink" },
          { path: "M262 119V244", fill: "none", stroke: "ink", width: 1.5, dashed: true },
          { path: "M302 128V244", fill: "none", stroke: "ink", width: 1.5, dashed: true },
          { path: "M262 238H302", fill: "none", stroke: "accent", width: 2 },
        ],
        labels: [
          { text: "2 cm past the nose", x: 312, y: 243, size: 15, align: "start" },
          { text: "Rim of the cone", x: 316, y: 100, size: 15, align: "start" },
          { text: "Two fingers fit at the neck", x: 8, y: 244, size: 15, align: "start" },
        ],
        alt: "A dog's head from the side inside a cone. The rim stands 2 cm past the nose.",
        caption: [text("The rim stands past the nose. Two fingers fit between collar and neck.")],
      },
      {
        kind: "list",
        mark: "number",
        items: [
          sign("put-on", "Slide the collar on from the front and close it at the neck."),
          sign("fingers", "Check that two fingers fit under it all round."),
          sign("eat", "Take it off only to eat, and only while you watch."),
        ],
      },
    ),
    section(
      "medicines",
      "Medicines",
      "plain",
      part(
        "amoxicillin-clavulanate",
        "amoxicillin-clavulanate, 375 mg tablets",
        body(
          text("To fight the infection. Give "),
          dose("amoxicillin-clavulanate"),
          text(" by mouth every 12 hours for 7 days, with food. The next dose is "),
          when("2026-03-02T20:00", "tonight at 8:00 PM"),
          text("."),
        ),
        small(text("It can upset the stomach. Finish the whole course, also when the wound looks good.")),
      ),
      part(
        "carprofen",
        "carprofen, 100 mg tablets",
        body(
          text("For pain and swelling. Give "),
          dose("carprofen"),
          text(" by mouth every 24 hours for 4 days, with food. The next dose is "),
          when("2026-03-03T09:00", "Tuesday, March 3, 9:00 AM"),
          text("."),
        ),
        small(text("Stop and ring us if Bramble is sick, has black poop or will not eat.")),
      ),
      chart,
    ),
    section(
      "calendar",
      "Visits",
      "plain",
      bullets(
        {
          inlines: [
            when("2026-03-03T09:30", "Tuesday, March 3, 9:30 AM"),
            text(": first bandage change. "),
            strong("Booked."),
          ],
        },
        {
          inlines: [
            when("2026-03-04T09:30", "Wednesday, March 4, 9:30 AM"),
            text(": bandage change. "),
            strong("Booked."),
          ],
        },
        {
          inlines: [
            when("2026-03-05T09:30", "Thursday, March 5, 9:30 AM"),
            text(": bandage change. "),
            strong("Booked."),
          ],
        },
        {
          inlines: [
            when("2026-03-09/2026-03-16", "March 9 to 16"),
            text(": we decide whether to close the wound. "),
            strong("Maybe."),
          ],
        },
      ),
      {
        kind: "month",
        iso: "2026-03",
        title: "March 2026",
        weekdays: weekdays.map((long) => ({ short: long.slice(0, 3), long })),
        weeks: [0, 7, 14, 21, 28, 35].map((start) => days.slice(start, start + 7)),
        legend,
      },
    ),
    section(
      "estimate",
      "What it may cost",
      "plain",
      estimate,
      small(
        text(
          "This estimate holds for 14 days. We ring you before the bill passes the highest total by more than 10 %. ",
        ),
        text("Please pay for each visit on the day. We take cards and cash."),
      ),
    ),
    section(
      "teach-back",
      "Tell us in your own words",
      "plain",
      {
        kind: "list",
        mark: "number",
        items: [
          { inlines: [text("Which number do you ring at two in the morning?")] },
          { inlines: [text("What do you do if the bandage comes off?")] },
          { inlines: [text("When is the next tablet due?")] },
        ],
      },
      body(text("Lucía also asked for this in Spanish: "), {
        kind: "passage",
        language: "es",
        inlines: [text("Vaya ya a urgencias si respira con dificultad.")],
      }),
    ),
    section(
      "sign",
      "Signed",
      "plain",
      {
        kind: "signature",
        lines: [[text("Lucía Ferrer, owner")], [text("Dr. Noor Haddad")], [text("Day and time")]],
      },
      small(text("This sheet supports what your veterinarian told you. It never replaces a veterinarian.")),
    ),
  ],
  events: [],
  calendarName: "Bramble's visits",
  letter: plainLetter,
};

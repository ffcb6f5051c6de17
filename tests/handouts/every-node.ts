import type { Handout, Inline, MonthDay } from "#handout/handout.js";
import { plainLetter } from "./letter.js";

/** A name that tries to become Markdown, a template, markup, a header and a path. It must print literally everywhere. */
export const hostile = "**Rex** {{x}} <b> \r\nBcc: a@example.org ../../etc & \"quoted\" 'single' `code`";

const from = "plan.yaml:1:1";
const text = (words: string): Inline => ({ kind: "text", text: words });
const strong = (words: string): Inline => ({ kind: "text", text: words, strong: true });
const tick = (label: string): Inline => ({ kind: "tick", label });
const halfTablet: Inline = {
  kind: "dose",
  medicine: "carprofen",
  amount: "0.5",
  unit: "tablet",
  text: "half a tablet",
  from,
};
const visit: Inline = { kind: "when", iso: "2026-03-03T09:30", text: "Tuesday 3 March at 9:30 AM", from };

const names = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];

/** Five weeks from Sunday 1 March 2026 to Saturday 4 April. */
const march: MonthDay[] = Array.from({ length: 35 }, (_, index) => {
  const inMonth = index < 31;
  const day = inMonth ? index + 1 : index - 30;
  const [month, name] = inMonth ? ["03", "March"] : ["04", "April"];
  return {
    iso: `2026-${month}-${String(day).padStart(2, "0")}`,
    text: String(day),
    label: `${names[index % 7]} ${day} ${name}`,
    inMonth,
    marks: [
      ...(index === 1 ? [{ mark: "discharge" as const, text: "Home today" }] : []),
      ...(index >= 2 && index <= 4 ? [{ mark: "booked" as const, text: "Visit booked" }] : []),
      ...(index === 7 || index === 10 ? [{ mark: "expected" as const, text: "Visit likely" }] : []),
      ...(index >= 8 && index <= 13 ? [{ mark: "possible" as const, text: "Visit possible" }] : []),
      ...(inMonth && index % 7 === 0 ? [{ mark: "closed" as const, text: "Clinic closed" }] : []),
    ],
  };
});

/** A handout with every kind of node, every variant of it, and hostile values wherever a person can write one. */
export const everyNode: Handout = {
  language: "en",
  direction: "ltr",
  title: `Going home: ${hostile}`,
  subtitle: [strong(hostile), text(", dog, spayed female, 24.6 kg")],
  running: { patient: hostile, date: "Monday 2 March 2026", clinic: "Juniper Row <Animal> Clinic" },
  pageWords: { before: "Page ", between: " of ", after: "", digits: "0123456789" },
  issued: "2026-03-02T16:30",
  zone: "America/Chicago",
  subject: `Going home: ${hostile}`,
  clinic: {
    name: "Juniper Row <Animal> Clinic",
    address: ["18 Juniper Row", "Riverbend, IL 60000"],
    email: "desk@juniper-row.example.org",
  },
  translationNotice: [text("These words have not yet been read by a second speaker of this language.")],
  sections: [
    {
      kind: "section",
      id: "ring",
      level: 2,
      weight: "urgent",
      title: [text("Whom to ring")],
      blocks: [
        { kind: "paragraph", role: "body", inlines: [text("While we are open, ring Juniper Row Animal Clinic:")] },
        {
          kind: "paragraph",
          role: "lead",
          inlines: [{ kind: "phone", e164: "+13125550142", text: "(312) 555-0142", from }],
        },
        {
          kind: "columns",
          columns: [
            [
              { kind: "paragraph", role: "body", inlines: [text("In the day")] },
              {
                kind: "list",
                mark: "bullet",
                items: [{ inlines: [text("The desk")] }, { inlines: [strong(hostile)] }],
              },
            ],
            [{ kind: "paragraph", role: "small", inlines: [text("In the night, "), halfTablet] }],
          ],
        },
        {
          kind: "list",
          mark: "bullet",
          items: [
            {
              inlines: [
                strong("While we are open: "),
                { kind: "phone", e164: "+13125550142", text: "(312) 555-0142", from },
                text(" Juniper Row Animal Clinic"),
              ],
              note: [
                text("Monday to Friday, 8 to 6. Or write to "),
                { kind: "email", address: "desk@juniper-row.example.org", text: "desk@juniper-row.example.org", from },
              ],
            },
            {
              inlines: [
                strong("At night and on Sundays: "),
                { kind: "phone", e164: "+13125550187", text: "(312) 555-0187", from },
                text(" Lakeside Animal Emergency Hospital"),
              ],
            },
          ],
        },
      ],
    },
    {
      kind: "section",
      id: "next",
      level: 2,
      weight: "urgent",
      title: [text("What comes next")],
      blocks: [
        { kind: "paragraph", role: "lead", inlines: [text("Next visit: "), visit, text(".")] },
        {
          kind: "paragraph",
          role: "body",
          inlines: [text("Next dose of carprofen: "), halfTablet, text(" with food.")],
        },
      ],
    },
    {
      kind: "section",
      id: "go-now",
      level: 2,
      weight: "urgent",
      title: [text("Go now if you see any of these")],
      blocks: [
        {
          kind: "list",
          mark: "bullet",
          items: [
            {
              inlines: [
                {
                  kind: "statement",
                  id: "breathing-hard",
                  inlines: [text("Breathing is "), strong("hard"), text(" or noisy.")],
                  from,
                },
              ],
            },
            {
              inlines: [
                { kind: "statement", id: "bleeding", inlines: [text("Blood drips for more than 5 minutes.")], from },
              ],
              note: [text("Press with a clean cloth while you travel.")],
            },
          ],
        },
      ],
    },
    {
      kind: "section",
      id: "home",
      level: 2,
      weight: "plain",
      title: [text("Care at home for "), strong(hostile)],
      blocks: [
        { kind: "paragraph", role: "body", inlines: [text(hostile)] },
        {
          kind: "section",
          id: "morning",
          level: 3,
          weight: "plain",
          title: [text("Each morning")],
          blocks: [
            {
              kind: "list",
              mark: "tick",
              items: [
                {
                  inlines: [
                    { kind: "statement", id: "look", inlines: [text("Look at the bandage. It should be dry.")], from },
                  ],
                },
                { inlines: [text(`Say good morning to ${hostile}`)], note: [text("A note under a tick.")] },
                { inlines: [text("Dose given "), tick("Dose given, Tuesday morning")] },
              ],
            },
            {
              kind: "list",
              mark: "number",
              items: [{ inlines: [text("Wash your hands.")] }, { inlines: [text("Put the collar back on.")] }],
            },
          ],
        },
        {
          kind: "section",
          id: "collar",
          level: 3,
          weight: "plain",
          title: [text("The collar")],
          blocks: [
            {
              kind: "figure",
              id: "collar-fit",
              width: 320,
              height: 160,
              shapes: [
                { path: "M20 20 L300 20 L240 120 L80 120 Z", fill: "pale", stroke: "ink", width: 2 },
                { path: "M130 60 a30 30 0 1 0 60 0 a30 30 0 1 0 -60 0", fill: "ink" },
                { path: "M80 130 L240 130", fill: "none", stroke: "accent", width: 3, dashed: true },
                { path: "M150 60 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0", fill: "accent" },
              ],
              labels: [
                { text: "20 cm <deep>", x: 160, y: 152, size: 16, align: "center" },
                { text: "rim", x: 22, y: 14, size: 14, align: "start" },
                { text: "nose", x: 298, y: 14, size: 14, align: "end" },
              ],
              alt: "A cone seen from the side. Its rim passes the nose by 2 cm.",
              caption: [text("The rim passes the nose.")],
            },
          ],
        },
        {
          kind: "paragraph",
          role: "body",
          inlines: [
            text("In the owner's other language: "),
            { kind: "passage", language: "es", inlines: [text("Vaya ya si respira con dificultad.")] },
          ],
        },
      ],
    },
    {
      kind: "section",
      id: "medicines",
      level: 2,
      weight: "plain",
      title: [text("Medicines")],
      blocks: [
        {
          kind: "table",
          caption: [text("Doses to tick")],
          head: [
            { inlines: [text("Day")], align: "start" },
            { inlines: [text("8 AM, amoxicillin-clavulanate")], align: "center" },
            { inlines: [text("9 AM, carprofen")], align: "center" },
            { inlines: [text("8 PM, amoxicillin-clavulanate")], align: "center" },
          ],
          rows: [3, 4, 5].map((day) => [
            {
              inlines: [{ kind: "when", iso: `2026-03-0${day}`, text: `${names[day - 1]} ${day} March`, from }],
              align: "start",
            },
            { inlines: [tick(`${day} March, 8 AM`), text(" "), halfTablet], align: "center" },
            { inlines: [tick(`${day} March, 9 AM`), text(" "), halfTablet], align: "center" },
            { inlines: [], align: "center" },
          ]),
          foot: [],
        },
      ],
    },
    {
      kind: "section",
      id: "calendar",
      level: 2,
      weight: "plain",
      title: [text("Visits")],
      blocks: [
        {
          kind: "paragraph",
          role: "body",
          inlines: [
            text("The wound should close "),
            { kind: "when", iso: "2026-03-09/2026-03-16", text: "between 9 and 16 March", from },
            text("."),
          ],
        },
        {
          kind: "month",
          iso: "2026-03",
          title: "March 2026",
          weekdays: names.map((long) => ({ short: long.slice(0, 3), long })),
          weeks: [0, 7, 14, 21, 28].map((start) => march.slice(start, start + 7)),
          legend: [
            { mark: "discharge", text: "Home today" },
            { mark: "booked", text: "Visit booked" },
            { mark: "expected", text: "Visit likely" },
            { mark: "possible", text: "Visit possible" },
            { mark: "closed", text: "Clinic closed" },
          ],
        },
      ],
    },
    {
      kind: "section",
      id: "estimate",
      level: 2,
      weight: "plain",
      title: [text("What it may cost")],
      blocks: [
        {
          kind: "table",
          caption: [text("Estimate")],
          head: [
            { inlines: [text("Item")], align: "start" },
            { inlines: [text("From")], align: "end" },
            { inlines: [text("To")], align: "end" },
          ],
          rows: [
            [
              { inlines: [text("Bandage change, 5 to 8 visits")], align: "start" },
              { inlines: [{ kind: "money", minor: 24000, currency: "USD", text: "$240.00", from }], align: "end" },
              { inlines: [{ kind: "money", minor: 38400, currency: "USD", text: "$384.00", from }], align: "end" },
            ],
          ],
          foot: [
            [
              { inlines: [strong("Total")], align: "start" },
              { inlines: [{ kind: "money", minor: 25500, currency: "USD", text: "$255.00", from }], align: "end" },
              { inlines: [{ kind: "money", minor: 40800, currency: "USD", text: "$408.00", from }], align: "end" },
            ],
          ],
        },
      ],
    },
    {
      kind: "section",
      id: "sign",
      level: 2,
      weight: "plain",
      title: [text("Signed")],
      blocks: [
        { kind: "signature", lines: [[text("Owner, "), strong(hostile)], [text("Dr. Noor Haddad")], [text("Date")]] },
        {
          kind: "paragraph",
          role: "small",
          inlines: [text("This paper supports what your veterinarian tells you. It never replaces them.")],
        },
      ],
    },
  ],
  events: [
    {
      uid: "JR-1042-change-1@example.org",
      sequence: 0,
      status: "confirmed",
      start: "2026-03-03T09:30",
      end: "2026-03-03T09:50",
      allDay: false,
      summary: `Bandage change: ${hostile}`,
      description: `Bring the collar. ${hostile}`,
      location: "Juniper Row <Animal> Clinic, 18 Juniper Row; Riverbend, IL 60000",
      phone: "(312) 555-0142",
      alarms: [{ minutesBefore: 1440, text: "Bandage change tomorrow" }],
      from,
    },
    {
      uid: "JR-1042-change-4@example.org",
      sequence: 1,
      status: "tentative",
      start: "2026-03-08",
      end: "2026-03-10",
      allDay: true,
      summary: "Bandage change, day not yet agreed",
      description: "",
      location: "",
      phone: "(312) 555-0142",
      alarms: [],
      from,
    },
    {
      uid: "JR-1042-change-5@example.org",
      sequence: 2,
      status: "cancelled",
      start: "2026-03-12",
      end: "2026-03-12",
      allDay: true,
      summary: "Bandage change",
      description: "",
      location: "",
      phone: "",
      alarms: [],
      from,
    },
  ],
  calendarName: `Visits of ${hostile}`,
  letter: plainLetter,
};

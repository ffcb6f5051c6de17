/**
 * The facts of the two worked cases, written out by hand from examples/*: what compute must come to, and what the tests of
 * composing stand on without it.
 */
import type { Amount, Dose, Facts, Medicine, Purpose, Sign, Statement, Step, Visit } from "#compute/facts.js";
import type { Place } from "#problems/place.js";

const at = (line: number): Place => ({ file: "plan.yaml", line, column: 5, length: 4 });
const inClinic = (line: number): Place => ({ file: "clinic.yaml", line, column: 3, length: 4 });
const amount = (value: string, unit: string): Amount => ({ value, unit });
const day = (month: string, number: number) => `${month}-${String(number).padStart(2, "0")}`;

type Row = { id: string; values?: Statement["values"] };
const statement = ({ id, values = {} }: Row): Statement => ({ id, topics: ["t"], values, from: at(11) });
const sign = (urgency: Sign["urgency"], id: string, values?: Statement["values"]): Sign => ({
  ...statement({ id: `signs.${id}`, ...(values ? { values } : {}) }),
  urgency,
});
const step = (times: Step["times"], id: string, values?: Statement["values"]): Step => ({
  ...statement({ id: `steps.${id}`, ...(values ? { values } : {}) }),
  times,
});

const clinic: Facts["clinic"] = {
  name: "Juniper Row Animal Clinic",
  address: ["18 Juniper Row", "Riverbend, IL 60000"],
  phone: "+13125550142",
  email: "desk@juniper-row.example.org",
  staffLanguage: "en",
  letterhead: [],
  signOff: [],
  accent: null,
  hours: [
    { from: 1, to: 5, hours: [{ open: "08:00", close: "18:00" }] },
    { from: 6, to: 6, hours: [{ open: "09:00", close: "13:00" }] },
    { from: 7, to: 7, hours: [] },
  ],
};

const contacts: Facts["contacts"] = [
  { when: "open", name: clinic.name, phone: clinic.phone, address: clinic.address, note: null, from: inClinic(4) },
  {
    when: "after-hours",
    name: "Lakeside Animal Emergency Hospital",
    phone: "+13125550187",
    address: ["400 Harbor Street", "Riverbend, IL 60000"],
    note: {
      en: "Open all night, every night. Call on your way.",
      es: "Abierto toda la noche, todos los días. Llame de camino.",
    },
    from: inClinic(8),
  },
];

/** A medicine given at fixed times from a first dose on; number: how many doses. */
function medicine(
  base: Pick<
    Medicine,
    | "id"
    | "name"
    | "form"
    | "strength"
    | "give"
    | "everyHours"
    | "active"
    | "purpose"
    | "lastGiven"
    | "dispense"
    | "leftOver"
  > & {
    line: number;
    firstDay: string;
    clocks: Dose["at"][];
    count: number;
    skipFirst?: number;
  },
): Medicine {
  const { line, firstDay, clocks, count, skipFirst = 0, ...rest } = base;
  const doses = Array.from({ length: count }, (_, index): Dose => {
    const slot = index + skipFirst;
    const date = new Date(`${firstDay}T00:00Z`);
    date.setUTCDate(date.getUTCDate() + Math.floor(slot / clocks.length));
    const clock = clocks[slot % clocks.length] ?? "08:00";
    return {
      medicine: base.id,
      number: index + 1,
      at: `${date.toISOString().slice(0, 10)}T${clock}`,
      slot: clock,
      part: clock < "12:00" ? "morning" : "evening",
      give: base.give,
      from: at(line),
    };
  });
  return {
    ...rest,
    goesOn: false,
    substance: base.id,
    onBox: null,
    holds: null,
    onceOpened: null,
    cautions: [],
    called: base.id,
    steps: [
      {
        give: base.give,
        everyHours: base.everyHours,
        often: base.everyHours < 24 ? "times-a-day" : "daily",
        days: count / clocks.length,
        times: clocks.map((clock) => ({ at: clock, part: clock < "12:00" ? "morning" : "evening" })),
        first: doses[0]?.at ?? null,
        last: doses.at(-1)?.at ?? null,
        from: at(line),
      },
    ],
    group: null,
    route: "mouth",
    asNeededMost: null,
    food: "with",
    missed: null,
    expires: null,
    doses,
    first: doses[0]?.at ?? null,
    last: doses.at(-1)?.at ?? null,
    statements: [],
    from: at(line),
  };
}

function chartOf(medicines: Medicine[]): Facts["chart"] {
  const doses = medicines.flatMap((one) => one.doses);
  const columns = medicines.flatMap((one) =>
    [...new Set(one.doses.map((dose) => dose.at.slice(11)))].sort().map((clock) => ({
      medicine: one.id,
      at: clock,
      part: clock < "12:00" ? ("morning" as const) : ("evening" as const),
    })),
  );
  const days = [...new Set(doses.map((dose) => dose.at.slice(0, 10)))].sort();
  return {
    columns,
    rows: days.map((date) => ({
      day: date,
      cells: columns.map(
        (column) =>
          doses.find((dose) => dose.medicine === column.medicine && dose.at === `${date}T${column.at}`) ?? null,
      ),
    })),
  };
}

/** The Sundays of both courses. */
const closedDays = ["2026-03-08", "2026-03-15"];
/** Each open day from the first to the last, within one month. */
const daysFrom = (first: string, last: string): string[] =>
  Array.from({ length: Number(last.slice(8)) - Number(first.slice(8)) + 1 }, (_, i) =>
    day(first.slice(0, 7), Number(first.slice(8)) + i),
  ).filter((one) => !closedDays.includes(one));
const purpose = (kind: string, number: number): Purpose => ({ kind, number, where: null, from: at(14) });
const visit = (
  id: string,
  kind: string,
  number: number,
  rest: Partial<Visit> & Pick<Visit, "earliest" | "latest">,
): Visit => ({
  id,
  purposes: [purpose(kind, number)],
  certainty: "expected",
  ideal: rest.earliest,
  days: daysFrom(rest.earliest, rest.latest),
  at: null,
  minutes: 20,
  where: null,
  dependsOn: null,
  unless: null,
  from: at(14),
  ...rest,
});

const span = (low: number, high: number, likely = low) => ({ low, likely, high });
const times = (fewest: number, most: number, likely = fewest) => ({ fewest, likely, most });

// ---- the dog ------------------------------------------------------------------------------------------------------

const march = (number: number) => day("2026-03", number);
const amoxiclav = medicine({
  id: "amoxicillin-clavulanate",
  name: "amoxicillin-clavulanate",
  form: "tablet",
  strength: amount("375", "mg"),
  give: amount("1", "tablet"),
  everyHours: 12,
  active: {
    amount: amount("375", "mg"),
    perKg: amount("15.24", "mg/kg"),
    orderedPerKg: amount("13.75", "mg/kg"),
    percentOff: "10.9",
  },
  purpose: { en: "To fight the infection.", es: "Para combatir la infección." },
  lastGiven: "2026-03-02T16:00",
  dispense: amount("14", "tablet"),
  leftOver: amount("0", "tablet"),
  line: 22,
  firstDay: march(3),
  clocks: ["08:00", "20:00"],
  count: 14,
});
const carprofen = medicine({
  id: "carprofen",
  name: "carprofen",
  form: "tablet",
  strength: amount("100", "mg"),
  give: amount("1", "tablet"),
  everyHours: 24,
  active: {
    amount: amount("100", "mg"),
    perKg: amount("4.07", "mg/kg"),
    orderedPerKg: amount("4.4", "mg/kg"),
    percentOff: "-7.6",
  },
  purpose: { en: "For pain and swelling.", es: "Para el dolor y la hinchazón." },
  lastGiven: "2026-03-02T09:00",
  dispense: amount("4", "tablet"),
  leftOver: amount("0.5", "tablet"),
  line: 30,
  firstDay: march(3),
  clocks: ["08:00"],
  count: 4,
});

const dogVisits: Visit[] = [
  ...[3, 4, 5].map((date, index) =>
    visit(`change-${index + 1}`, "bandage-change", index + 1, {
      certainty: "booked",
      earliest: march(date),
      latest: march(date),
      at: `${march(date)}T09:30`,
    }),
  ),
  visit("change-4", "bandage-change", 4, { earliest: march(6), latest: march(9) }),
  visit("change-5", "bandage-change", 5, { earliest: march(9), latest: march(12) }),
  visit("change-6", "bandage-change", 6, { certainty: "possible", earliest: march(11), latest: march(14) }),
  visit("closure-1", "closure", 1, {
    certainty: "possible",
    earliest: march(9),
    latest: march(16),
    minutes: 60,
    dependsOn: "closure",
  }),
];
const [dogNext] = dogVisits;
const dogMedicines = [amoxiclav, carprofen];

export const dog: Facts = {
  caseId: "JR-1042",
  revision: 0,
  zone: "America/Chicago",
  country: "US",
  discharged: "2026-03-02T16:30",
  clinician: "Dr. Noor Haddad",
  patient: {
    name: "Bramble",
    species: "dog",
    sex: "female",
    neutered: true,
    breed: "mixed breed",
    age: { years: 6, months: 10 },
    weight: amount("24.6", "kg"),
  },
  owner: { name: "Lucía Ferrer", languages: ["es"], email: "lucia.ferrer@example.org", address: [] },
  clinic,
  contacts,
  reason: {
    en: "A large abscess on the left cheek. We opened it, washed it out and packed it with damp gauze under a bandage.",
    es: "Un absceso grande en la mejilla izquierda. Lo abrimos, lo lavamos y lo rellenamos con gasa húmeda bajo un vendaje.",
  },
  next: {
    dose: amoxiclav.doses[0] ?? null,
    alsoDue: carprofen.doses.slice(0, 1),
    visit: dogNext ?? null,
    trip: null,
  },
  care: [
    {
      topic: "open-wound-clinic-bandage",
      site: "cheek",
      side: "left",
      bandage: "tie-over",
      since: "2026-03-02",
      done: ["wound-open", "clinic-changes", "wound-tells", "tie-over"].map((id) => statement({ id: `done.${id}` })),
      from: at(11),
    },
  ],
  signs: [
    ...["breathing", "collapse", "bandage-airway", "throat-swelling"].map((id) => sign("now", id)),
    sign("now", "bleeding", { minutes: amount("10", "min") }),
    ...["eye-danger", "swallowed", "organ-out"].map((id) => sign("now", id)),
    sign("today", "not-eating", { time: amount("24", "h") }),
    ...["dull", "pain", "bandage-off", "bandage-wet", "bandage-smell", "gauze-out"].map((id) => sign("today", id)),
    sign("visit", "licks"),
  ],
  normal: [
    statement({ id: "normal.bandage-feels-odd", values: { days: amount("1", "day") } }),
    statement({ id: "normal.small-spot" }),
    statement({ id: "normal.eyelid-puffy", values: { days: amount("2", "day") } }),
  ],
  steps: [
    step(["morning", "evening"], "check-bandage"),
    step(["morning"], "photo"),
    step(["any"], "keep-dry"),
    step(["any"], "short-walks"),
    step(["any"], "cover-outside", { minutes: amount("30", "min") }),
  ],
  avoid: ["touch-bandage", "gauze", "human-medicine"].map((id) => statement({ id: `avoid.${id}` })),
  supplies: ["bag", "lead", "harness"].map((id) => statement({ id: `supplies.${id}` })),
  ends: [statement({ id: "ends.bandage-off" })],
  medicines: dogMedicines,
  feeding: [],
  chart: chartOf(dogMedicines),
  course: {
    visits: dogVisits,
    trips: times(5, 8, 6),
    purposes: [
      { kind: "bandage-change", counts: times(5, 7, 6) },
      { kind: "closure", counts: times(0, 1) },
    ],
    ends: { earliest: march(12), latest: march(16) },
    first: null,
    closed: [8, 15].map((date) => ({ day: march(date), reason: "weekly" as const, name: null })),
  },
  collar: {
    kind: "cone",
    size: "L",
    depth: amount("25", "cm"),
    pastNose: amount("5", "cm"),
    margin: amount("3", "cm"),
    fingers: { least: 1, most: 2 },
    until: { event: "bandage-off", day: null },
    statements: [
      statement({ id: "collar.all-the-time" }),
      statement({ id: "collar.past-nose", values: { margin: amount("3", "cm") } }),
      statement({ id: "collar.fingers", values: { least: "1", most: "2" } }),
      statement({ id: "collar.trouble" }),
    ],
    from: at(38),
  },
  log: {
    days: ["2026-03-02", "2026-03-03"],
    rows: [
      { id: "ate", write: "tick", days: ["2026-03-02", "2026-03-03"] },
      { id: "breaths", write: "number", days: ["2026-03-02", "2026-03-03"] },
    ],
  },
  ahead: {
    lastDay: march(16),
    knownTo: "2026-05-15",
    shut: [march(10)],
    parts: [
      { part: "morning", from: "05:00" },
      { part: "midday", from: "11:00" },
      { part: "evening", from: "17:00" },
      { part: "bedtime", from: "21:00" },
    ],
  },
  estimate: {
    called: "estimate",
    before: { charged: 0, open: span(0, 0), days: [], total: span(0, 0) },
    discounts: [],
    visits: [],
    byDate: [
      { day: march(2), total: span(32966, 32966) },
      { day: march(16), total: span(56966, 98566, 61766) },
    ],
    branches: [],
    credit: 0,
    deposit: null,
    cash: null,
    currency: "USD",
    lines: [
      {
        item: "abscess opened and flushed",
        name: { en: "Abscess opened and flushed", es: "Absceso abierto y lavado" },
        houseName: null,
        quantity: times(1, 1),
        of: null,
        unit: span(31000, 31000),
        total: span(31000, 31000),
        included: 0,
        when: null,
        dependsOn: null,
        from: at(42),
      },
      {
        item: "bandage change",
        name: { en: "Bandage change", es: "Cambio de vendaje" },
        houseName: { of: "visit", name: "bandage-change" },
        quantity: times(5, 7, 6),
        of: null,
        unit: span(4800, 4800),
        total: span(24000, 33600, 28800),
        included: 0,
        when: null,
        dependsOn: null,
        from: at(43),
      },
      {
        item: "closure",
        name: { en: "Closing the wound", es: "Cierre de la herida" },
        houseName: { of: "visit", name: "closure" },
        quantity: times(0, 1),
        of: null,
        unit: span(24000, 32000),
        total: span(0, 32000),
        included: 0,
        when: null,
        dependsOn: "closure",
        from: at(45),
      },
      {
        item: "cone collar",
        name: { en: "Cone collar", es: "Collar isabelino" },
        houseName: { of: "collar", name: "cone" },
        quantity: times(1, 1),
        of: null,
        unit: span(1850, 1850),
        total: span(1850, 1850),
        included: 0,
        when: null,
        dependsOn: null,
        from: at(47),
      },
    ],
    subtotal: span(56850, 98450, 61650),
    taxes: [
      {
        name: { en: "Sales tax", es: "Impuesto sobre las ventas" },
        percent: "6.25",
        inclusive: false,
        amount: span(116, 116),
      },
    ],
    total: span(56966, 98566, 61766),
    whole: span(56966, 98566, 61766),
    today: span(32966, 32966),
    paid: 15000,
    balance: span(41966, 83566, 46766),
    validUntil: march(16),
    ringAbove: 108423,
    terms: {
      en: "Please pay for each visit on the day. We take cards and cash.",
      es: "Por favor, pague cada visita el mismo día. Aceptamos tarjeta y efectivo.",
    },
    excluded: [
      { en: "The emergency hospital", es: "El hospital de urgencias" },
      { en: "Laboratory tests, if they are needed", es: "Análisis de laboratorio, si hacen falta" },
    ],
    from: at(40),
  },
  changes: null,
};

// ---- the cat ------------------------------------------------------------------------------------------------------

const drops = medicine({
  id: "amoxicillin-clavulanate",
  name: "amoxicillin-clavulanate",
  form: "liquid",
  strength: amount("62.5", "mg/mL"),
  give: amount("1", "mL"),
  everyHours: 12,
  active: {
    amount: amount("62.5", "mg"),
    perKg: amount("14.88", "mg/kg"),
    orderedPerKg: null,
    percentOff: null,
  },
  purpose: { en: "To fight the infection.", es: "Para combatir la infección." },
  lastGiven: "2026-03-05T10:45",
  dispense: amount("15", "mL"),
  leftOver: amount("1", "mL"),
  line: 17,
  firstDay: march(5),
  clocks: ["08:00", "20:00"],
  count: 14,
  skipFirst: 1,
});
const catVisits: Visit[] = [
  visit("recheck-1", "recheck", 1, { earliest: march(9), latest: march(10) }),
  visit("recheck-2", "recheck", 2, { earliest: march(16), latest: march(16) }),
];

export const cat: Facts = {
  ...dog,
  caseId: "JR-1057",
  discharged: "2026-03-05T11:10",
  patient: {
    name: "Clementine",
    species: "cat",
    sex: "female",
    neutered: true,
    breed: null,
    age: { years: 4, months: 6 },
    weight: amount("4.2", "kg"),
  },
  owner: { name: "Tom Whitlow", languages: ["en"], email: "tom.whitlow@example.org", address: [] },
  reason: {
    en: "A small abscess near the base of the tail. It has burst, and we cleaned it. It can heal at home.",
    es: "Un absceso pequeño cerca de la base de la cola. Se ha reventado y lo limpiamos. Puede curar en casa.",
  },
  next: { dose: drops.doses[0] ?? null, alsoDue: [], visit: catVisits[0] ?? null, trip: null },
  care: [
    {
      topic: "abscess-home-care",
      site: "tail-base",
      side: null,
      bandage: null,
      since: "2026-03-05",
      done: ["abscess", "hole-open"].map((id) => statement({ id: `done.${id}` })),
      from: at(11),
    },
  ],
  signs: [
    sign("now", "breathing"),
    sign("now", "collapse"),
    sign("now", "bleeding", { minutes: amount("10", "min") }),
    sign("today", "wound-worse"),
    sign("today", "lump-back"),
    sign("visit", "licks"),
  ],
  normal: [statement({ id: "normal.pus-few-days", values: { days: amount("2", "day") } })],
  steps: [
    step(["any"], "wash-hands"),
    step(["morning", "evening"], "warm-compress", { minutes: amount("5", "min") }),
    step(["morning", "evening"], "clean-wound"),
  ],
  avoid: ["squeeze", "hot", "human-medicine"].map((id) => statement({ id: `avoid.${id}` })),
  supplies: ["cloths", "bowl", "gauze"].map((id) => statement({ id: `supplies.${id}` })),
  ends: [statement({ id: "ends.healed" })],
  medicines: [drops],
  chart: chartOf([drops]),
  course: {
    visits: catVisits,
    trips: times(2, 2),
    purposes: [{ kind: "recheck", counts: times(2, 2) }],
    ends: { earliest: march(16), latest: march(16) },
    first: null,
    closed: [8, 15].map((date) => ({ day: march(date), reason: "weekly" as const, name: null })),
  },
  collar: {
    kind: "soft-cone",
    size: "S",
    depth: amount("15", "cm"),
    pastNose: amount("5", "cm"),
    margin: amount("3", "cm"),
    fingers: { least: 1, most: 2 },
    until: { event: null, day: march(15) },
    statements: [statement({ id: "collar.all-the-time" }), statement({ id: "collar.soft-holds" })],
    from: at(24),
  },
  estimate: {
    called: "estimate",
    before: { charged: 0, open: span(0, 0), days: [], total: span(0, 0) },
    discounts: [],
    visits: [],
    byDate: [
      { day: march(9), total: span(3900, 3900) },
      { day: march(16), total: span(7800, 7800) },
    ],
    branches: [],
    credit: 0,
    deposit: null,
    cash: null,
    currency: "USD",
    lines: [
      {
        item: "recheck",
        name: { en: "Recheck", es: "Revisión" },
        houseName: { of: "visit", name: "recheck" },
        quantity: times(2, 2),
        of: null,
        unit: span(3900, 3900),
        total: span(7800, 7800),
        included: 0,
        when: null,
        dependsOn: null,
        from: at(27),
      },
    ],
    subtotal: span(7800, 7800),
    taxes: [],
    total: span(7800, 7800),
    whole: span(7800, 7800),
    today: span(0, 0),
    paid: 0,
    balance: span(7800, 7800),
    validUntil: march(19),
    ringAbove: 8580,
    terms: null,
    excluded: [],
    from: at(26),
  },
  changes: null,
};

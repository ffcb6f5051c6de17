/**
 * Facts: everything that follows from a plan by computation, each with the place it follows from.
 *
 * Plain data, no words: compute decides, compose words. Decimals are strings ("0.5"), money is whole minor units, days and
 * times are on the clinic's clock.
 */
import type { Place } from "#problems/place.js";

/** "2026-03-04" */
export type Day = string;
/** "16:30" */
export type Clock = string;
/** "2026-03-04T16:30", on the clinic's clock. */
export type LocalTime = string;
/** Decimal value and unit: {value: "0.5", unit: "tablet"}. */
export type Amount = { value: string; unit: string };
/** The same words in the languages somebody wrote them in, by language tag. */
export type Told = Record<string, string>;

export type Species = "dog" | "cat";

export type Patient = {
  name: string;
  species: Species;
  sex: "female" | "male";
  neutered: boolean;
  breed: string | null;
  /** Whole years and months on the day of discharge. */
  age: { years: number; months: number } | null;
  weight: Amount;
};

export type Clinic = {
  name: string;
  address: string[];
  phone: string;
  email: string | null;
  staffLanguage: string;
  /** Lines of its own under its address. */
  letterhead: { text: Told; from: Place }[];
  /** Who signs for it besides the clinician. */
  signOff: string[];
  /** "#1c5b66" with what it becomes on a dark screen. */
  accent: { light: string; dark: string } | null;
  /** One row a stretch of weekdays (1 Monday - 7 Sunday) with the same hours; closed when hours is empty. */
  hours: { from: number; to: number; hours: { open: Clock; close: Clock }[] }[];
};

/** Whom to ring: the clinic while it is open, somebody else after hours. e164: "+15550142". */
export type Contact = {
  when: "open" | "after-hours";
  name: string;
  phone: string;
  address: string[];
  note: Told | null;
  from: Place;
};

/** A sign, step or other statement of the care tables; its words are locales/<tag>/statements. Values fill its words. */
export type Statement = {
  id: string;
  topics: string[];
  /** What of the case it is about, a heading where a list is long: "bandage". */
  about?: string;
  values: Record<string, Amount | string>;
  from: Place;
};
/** now: go at once. today: ring before the day is out. visit: tell us at the next visit. */
export type Urgency = "now" | "today" | "visit";
export type Sign = Statement & { urgency: Urgency };
export type DayPart = "morning" | "midday" | "evening" | "bedtime" | "any";
/** A step is said once, with all the times of day it is done at. */
export type Step = Statement & { times: DayPart[] };

/** One thing the animal is cared for: the topic, where on the body, and what the clinician chose. */
export type Care = {
  topic: string;
  site: string | null;
  side: "left" | "right" | null;
  bandage: string | null;
  /** The day of the first paper that tells of it. */
  since: Day;
  done: Statement[];
  from: Place;
};

// ---- visits -------------------------------------------------------------------------------------------------------

/**
 * What one visit is for. kind is a row of shared/visits ("bandage-change"); number: the how-manieth of its kind. where: the place
 * on the body, told only where the animal is cared for at more than one.
 */
export type Purpose = { kind: string; number: number; where: BodySite | null; from: Place };

/** A place on the body: a row of shared/sites ("cheek") and the side of it, if it has two. */
export type BodySite = { site: string; side: "left" | "right" | null };

/** booked: day and time agreed. expected: will happen within the window. possible: the wound, or a decision, will tell. */
export type Certainty = "booked" | "expected" | "possible";

export type Visit = {
  /** Stable over revisions of the same course line: "change-1". */
  id: string;
  purposes: Purpose[];
  certainty: Certainty;
  /** First and last day that keep every window and gap; ideal is the day the course would choose. */
  earliest: Day;
  ideal: Day;
  latest: Day;
  /** Every day it may fall on, from the earliest to the latest. */
  days: Day[];
  /** Agreed time of a booked visit. */
  at: LocalTime | null;
  minutes: number;
  /** Name of a partner clinic, or null for our own. */
  where: string | null;
  /** The kind of decision it waits for ("closure"), if any. */
  dependsOn: string | null;
  /** The kind of decision that would spare it ("closure"), where nothing else would; it is then only possible. */
  unless: string | null;
  from: Place;
};

export type Counts = { fewest: number; likely: number; most: number };

/** First and last day of a trip that may be for any of some kinds of purpose. */
export type FirstTrip = { earliest: Day; latest: Day; kinds: { kind: string }[] };

export type Course = {
  visits: Visit[];
  /** How many trips, and how many of each kind of purpose. */
  trips: Counts;
  purposes: { kind: string; counts: Counts }[];
  /** The day of the last visit in the shortest and in the longest course; null where there is no visit at all. */
  ends: { earliest: Day; latest: Day } | null;
  /** The very next trip where it is sure that there is one, whatever it turns out to be for; null where none is sure. */
  first: FirstTrip | null;
  /** Days in the course's span when the clinic is closed. */
  closed: { day: Day; reason: "weekly" | "closure" | "holiday"; name: string | null }[];
};

// ---- medicines ----------------------------------------------------------------------------------------------------

/** One giving at home. number counts from 1; slot: its time of day, which `at` leaves only on a day whose clocks skip it. */
export type Dose = {
  medicine: string;
  number: number;
  at: LocalTime;
  slot: Clock;
  part: DayPart;
  give: Amount;
  from: Place;
};

/**
 * A stretch of a course with one dose: a taper and a loading dose have several. times: when in the day, in the order of the
 * clock; first, last: its doses. What is given only as needed has no times.
 */
export type Stretch = {
  give: Amount;
  everyHours: number;
  often: "daily" | "times-a-day" | "every-few-days";
  days: number;
  times: { at: Clock; part: DayPart }[];
  first: LocalTime | null;
  last: LocalTime | null;
  from: Place;
};

export type Medicine = {
  /** Unique in the plan: "amoxicillin-clavulanate". */
  id: string;
  /** As the clinician wrote it. */
  name: string;
  /** Row of shared/medicines, or null where the tool knows nothing about it. */
  substance: string | null;
  /** The row whose name an owner may read in place of the clinician's; null where that names several, or none. */
  called: string | null;
  /** Class in shared/medicines ("nsaid"), for the words on effects and handling. */
  group: string | null;
  form: string;
  /** {value: "375", unit: "mg"} a tablet, or {value: "50", unit: "mg/mL"}. */
  strength: Amount | null;
  /** What the plan has only words for: "0.3 %". */
  onBox: string | null;
  /** "mouth", "left eye", "both ears": `give` goes into each of both. */
  route: string;
  give: Amount;
  /** What give really holds, after rounding to what can be given; percentOff from the ordered dose, with its sign. */
  active: { amount: Amount; perKg: Amount; orderedPerKg: Amount | null; percentOff: string | null } | null;
  everyHours: number;
  /** One after the other; their doses together are `doses`. give, active and everyHours are those the course began with. */
  steps: Stretch[];
  /** Most givings in 24 hours of a medicine given only as needed; null for one given by the clock. */
  asNeededMost: number | null;
  food: "with" | "without" | "either" | null;
  purpose: Told | null;
  /** What to do after a missed dose, where the clinician says it. */
  missed: Told | null;
  /** An earlier paper began it: what is told here are the doses that are left. */
  goesOn: boolean;
  lastGiven: LocalTime | null;
  doses: Dose[];
  first: LocalTime | null;
  last: LocalTime | null;
  /** The last day it may be used, where the plan says it. */
  expires: Day | null;
  /** What goes home: tablets, millilitres, or bottles, tubes and vials of what nobody counts out. */
  dispense: Amount;
  /** What one bottle, tube or vial holds, where the plan says it. */
  holds: Amount | null;
  /** How long it may be used once it is opened, in days, where the plan says it. */
  onceOpened: Amount | null;
  leftOver: Amount;
  /** Words on effects, stopping, handling and storage, from the tables. */
  statements: Statement[];
  /** Those of the statements that stand on the label of its container too. */
  cautions: Statement[];
  from: Place;
};

/** A day-by-time chart: one column a medicine and time of day. */
export type Chart = {
  columns: { medicine: string; at: Clock; part: DayPart }[];
  rows: { day: Day; cells: (Dose | null)[] }[];
};

// ---- money --------------------------------------------------------------------------------------------------------

export type Span = { low: number; likely: number; high: number };

export type CostLine = {
  /** Key of the clinic's price list. */
  item: string;
  /** What the owner reads, in the languages of the price list. */
  name: Told;
  /** What the house calls it, for languages that the price list lacks: a kind of visit, of collar, or a medicine's name. */
  houseName: { of: "visit" | "collar" | "medicine"; name: string } | null;
  quantity: Counts;
  /** What the quantity counts of a medicine that is dispensed: "tablet", "mL"; null for what is done so many times. */
  of: string | null;
  /** How many of them a package of this estimate holds; they cost nothing more. */
  included: number;
  /** The price of one; where the price depends on the day, from the cheapest day to the dearest. */
  unit: Span;
  /** Before discounts, and before the taxes that prices do not hold. */
  total: Span;
  /** Written as only a maybe, "if needed" or "if done"; such a line counts in high only. */
  when: "needed" | "done" | null;
  /** The decision it waits for, if any; such a line counts in high only. */
  dependsOn: string | null;
  from: Place;
};

/** What comes off one line, or off the whole where on is null. percent: "10", or null for an amount of money. */
export type Discount = { name: Told | null; on: Told | null; percent: string | null; amount: Span };

/** What comes of it if something that is only a maybe happens. decision: its kind, or null for all that is only "if needed". */
export type Branch = { decision: string | null; without: Span; with: Span };

/**
 * What one visit costs if it happens; "if needed" counts in high only. own: without what is charged once in the whole course,
 * if needed, and so may as well come at another visit. certainty and dependsOn are the visit's.
 */
export type VisitCost = {
  visit: string;
  day: Day;
  certainty: Certainty;
  dependsOn: string | null;
  amount: Span;
  own: Span;
};

/**
 * What the days before a paper come to. charged: all that the clinic has charged. open: what the other days, named here, were
 * expected to come to, and nobody knows yet. total: both.
 */
export type Before = { charged: number; open: Span; days: Day[]; total: Span };

export type Estimate = {
  /** What the clinic calls it: a quote binds in some countries. */
  called: "estimate" | "quote";
  currency: string;
  lines: CostLine[];
  subtotal: Span;
  discounts: Discount[];
  taxes: { name: Told; percent: string; inclusive: boolean; amount: Span }[];
  total: Span;
  /** The part of the total that is for the day of discharge. */
  today: Span;
  visits: VisitCost[];
  /** All that it has come to by the end of each day on which something is charged; the last is the whole. */
  byDate: { day: Day; total: Span }[];
  branches: Branch[];
  /** What came before this paper; the total is what comes after. */
  before: Before;
  /** Of the whole case, from its first day: what came before, and the total. */
  whole: Span;
  paid: number;
  /** What is left to pay; 0 where more was paid. */
  balance: Span;
  /** The most that may come back to the owner: what was paid beyond whole.low, or 0. */
  credit: number;
  /** Asked for beforehand, and how much of it is not yet paid. */
  deposit: { asked: number; due: number } | null;
  /** Where cash is rounded: to which step, in minor units, and what the whole and the balance are in cash. */
  cash: { step: number; total: Span; balance: Span } | null;
  validUntil: Day | null;
  /** The clinic rings before the bill passes this. */
  ringAbove: number | null;
  terms: Told | null;
  excluded: Told[];
  from: Place;
};

// ---- collar -------------------------------------------------------------------------------------------------------

export type Collar = {
  kind: string;
  /** The clinic's own name for the size that was chosen, and how deep it is; null where the clinic lists no collars. */
  size: string | null;
  depth: Amount | null;
  /** How far it passes the nose, null also without a size; and the least that was asked for. Both null for a ring, which does not work that way. */
  pastNose: Amount | null;
  margin: Amount | null;
  fingers: { least: number; most: number };
  until: { event: string | null; day: Day | null };
  statements: Statement[];
  from: Place;
};

// ---- read later ---------------------------------------------------------------------------------------------------

/** What is known of the days after the discharge, for a page that looks at the clock when it is read. */
export type Ahead = {
  /** The day of the last visit or dose; that of discharge where there is neither. */
  lastDay: Day;
  /** Closures and holidays have been looked up to this day. */
  knownTo: Day;
  /** Days up to it on which the clinic is shut though its week has it open. */
  shut: Day[];
  /** When each part of the day begins; the last lasts into the night, until the first. */
  parts: { part: DayPart; from: Clock }[];
};

// ---- a revision ---------------------------------------------------------------------------------------------------

/** What is not as the paper before said; nothing else is new. Visits and money that only may come are not told. */
export type Changes = {
  /** The day of the paper before. */
  since: Day;
  /** booked: a time within the days that were told before. */
  visits: { booked: Visit[]; moved: { visit: Visit; before: Visit }[]; added: Visit[]; cancelled: Visit[] };
  /** What the animal is cared for now and was not before: another topic, place or bandage. */
  care: Care[];
  medicines: { started: Medicine[]; stopped: Medicine[]; changed: Medicine[] };
  collar: Collar["until"] | null;
  /** Of the whole case, from its first day. */
  cost: { before: Span; after: Span } | null;
  any: boolean;
  /** Every visit a calendar may still hold from an earlier paper, and that is not to be. */
  gone: Visit[];
  from: Place;
};

// ---- the log ------------------------------------------------------------------------------------------------------

/** What the owner writes down day by day: rows of shared/log.json, each with a box to tick or room for a number, and the days it is asked on. */
export type HomeLog = { days: Day[]; rows: { id: string; write: "tick" | "number"; days: Day[] }[] };

// ---- all of it ----------------------------------------------------------------------------------------------------

/** All that follows from a plan, each with its place in it: plain data, decimals as strings, money in whole minor units. */
export type Facts = {
  /** Same for every revision of one case; part of a calendar event's UID. */
  caseId: string;
  revision: number;
  zone: string;
  country: string;
  discharged: LocalTime;
  clinician: string | null;
  patient: Patient;
  /** languages: those the owner reads, the best first; at least one. */
  owner: { name: string; languages: string[]; email: string | null; address: string[] };
  clinic: Clinic;
  contacts: Contact[];
  reason: Told;
  /** The very next things to do. */
  /** trip: where no one visit is sure, and it is sure that there is some visit. */
  next: { dose: Dose | null; alsoDue: Dose[]; visit: Visit | null; trip: FirstTrip | null };
  care: Care[];
  signs: Sign[];
  normal: Statement[];
  steps: Step[];
  avoid: Statement[];
  supplies: Statement[];
  /** When the care is over. */
  ends: Statement[];
  medicines: Medicine[];
  chart: Chart | null;
  /** Food and supplements, in the clinician's words. */
  feeding: { text: Told; from: Place }[];
  course: Course;
  collar: Collar | null;
  estimate: Estimate | null;
  log: HomeLog;
  ahead: Ahead;
  /** null on the first paper of a case. */
  changes: Changes | null;
};

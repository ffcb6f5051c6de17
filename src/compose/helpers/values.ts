import type { Dose, Medicine, Span, Stretch } from "#compute/facts.js";
import type { Inline, When } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { Fragment } from "../holes.js";
import { medicineNameOn, placedMedicineOn } from "../medicine-name.js";
import type { Page } from "../page.js";
import { amountOn, plainOn, sayOn, textOn, valueOn } from "../page.js";
import { asText, type Helper } from "./helper.js";

/** {{value patient.name}}, or simply {{patient.name}}. */
const value: Helper = (page, [given]) => valueOn(page, given);

/** {{when validUntil}}: "Monday, March 16"; with a time, "Monday, March 16 at 9:30 AM". capital=true: it begins a line. */
const when: Helper = (page, [given], { capital }, owner) =>
  page.holes.inline(begun(page, whenOn(page, asText(given), page.origins.text(owner)), capital));

/** {{date discharged}}: the day with its year, "March 2, 2026". */
const date: Helper = (page, [given], _hash, owner) => {
  const iso = asText(given).slice(0, 10);
  return page.holes.inline({ kind: "when", iso, text: page.voice.wholeDay(iso), from: page.origins.text(owner) });
};

/** {{dates before.days}}: "March 2 and March 4" */
const dates: Helper = (page, [given], _hash, owner) =>
  new Fragment(
    page.voice.list(
      (given as string[]).map((iso) => {
        const from = page.origins.text(owner);
        return page.holes.inline({ kind: "when", iso, text: page.voice.monthDay(iso), from }).markdown;
      }),
    ),
  );

/** {{between earliest latest}}: "between Friday, March 6 and Sunday, March 8", or the one day if they are the same. */
const between: Helper = (page, [first, last], { capital }, owner) =>
  page.holes.inline(begun(page, betweenOn(page, asText(first), asText(last), page.origins.text(owner)), capital));

const begun = ({ voice }: Page, when: When, capital: unknown): When =>
  capital === true ? { ...when, text: voice.capital(when.text) } : when;

/** {{time at}}: "8:00 AM" */
const time: Helper = (page, [given]) => textOn(page, page.voice.time(asText(given)));

/** {{times remedy.times}}: "8:00 AM and 8:00 PM" */
const times: Helper = (page, [given]) =>
  textOn(page, page.voice.list((given as { at: string }[]).map(({ at }) => page.voice.time(at))));

/** {{timeRange open close}}: "8:00 AM – 6:00 PM" */
const timeRange: Helper = (page, [open, close]) => textOn(page, page.voice.timeRange(asText(open), asText(close)));

/** {{dose due}}: what to give at one time. */
const dose: Helper = (page, [given]) => page.holes.inline(doseOn(page, given as Dose));

/** {{give step of=medicine}}: "Give 1 tablet by mouth", what is done each time in a stretch of a course; of a medicine, in the first. */
const give: Helper = (page, [given], { of }) => {
  const { give, from } = (given as Medicine).steps?.[0] ?? (given as Stretch);
  const { id, route } = of as Medicine;
  const amount = page.holes.inline(doseOn(page, { medicine: id, give, from }));
  return sayOn(page, `handout:medicines.give.${route}`, { give: amount });
};

/** {{medicine medicine}}: its name in the owner's language, and the label's in brackets. */
const medicine: Helper = (page, [given]) => medicineNameOn(page, given as Medicine);

/** {{placed medicine}}: the same, and into which eye or ear, where nothing else says it: "Ofloxacin (left eye)". */
const placed: Helper = (page, [given]) => placedMedicineOn(page, given as Medicine);

/** {{amount strength}}: "375 mg" */
const amount: Helper = (page, [given]) => valueOn(page, given);

/** {{hours everyHours}}: "12 hours", "24 hours"; longer ones in days, "2 days". */
const hours: Helper = (page, [given]) => {
  const count = Number(given);
  const inDays = count > 24 && count % 24 === 0;
  return valueOn(page, inDays ? { value: String(count / 24), unit: "day" } : { value: String(count), unit: "hour" });
};

/** {{money total.low}}: whole minor units of the estimate's currency. */
const money: Helper = (page, [given], _hash, owner) =>
  page.holes.inline(moneyOn(page, Number(given), page.origins.text(owner)));

/** {{span cost.after}}: "$64.00 to $142.00", or the one amount if they are the same. */
const span: Helper = (page, [given], _hash, owner) => {
  const { low, high } = given as Span;
  const [least, most] = [low, high].map((minor) => page.holes.inline(moneyOn(page, minor, page.origins.text(owner))));
  return low === high && least ? least : sayOn(page, "changes:span", { low: least, high: most });
};

/** {{phone contact.phone}} */
const phone: Helper = (page, [given], _hash, owner) => {
  const e164 = asText(given);
  return page.holes.inline({ kind: "phone", e164, text: page.voice.phone(e164), from: page.origins.text(owner) });
};

/** {{lines address}}: lines as one value, "400 Harbor Street, Riverbend". */
const lines: Helper = (page, [given]) => textOn(page, (given as string[]).join(", "));

/** {{email clinic.email}} */
const email: Helper = (page, [given], _hash, owner) => {
  const address = asText(given);
  return page.holes.inline({ kind: "email", address, text: address, from: page.origins.text(owner) });
};

export const valueHelpers = {
  value,
  when,
  date,
  dates,
  between,
  time,
  times,
  timeRange,
  dose,
  give,
  medicine,
  placed,
  amount,
  hours,
  money,
  span,
  phone,
  email,
  lines,
};

export const whenOn = ({ voice }: Page, iso: string, from: string): When => ({
  kind: "when",
  iso,
  text: iso.includes("T") ? voice.dateTime(iso) : voice.day(iso),
  from,
});

export function betweenOn(page: Page, first: string, last: string, from: string): When {
  if (first === last) return whenOn(page, first, from);
  const { voice } = page;
  const text = plainOn(page, "calendar:between", { first: voice.day(first), last: voice.day(last) });
  return { kind: "when", iso: `${first}/${last}`, text, from };
}

export const doseOn = (page: Page, { medicine, give, from }: Pick<Dose, "medicine" | "give" | "from">): Inline => ({
  kind: "dose",
  medicine,
  amount: give.value,
  unit: give.unit,
  text: amountOn(page, give),
  from: placeText(from),
});

export const moneyOn = ({ view, voice }: Page, minor: number, from: string): Inline => {
  const currency = view.estimate?.currency ?? "";
  return { kind: "money", minor, currency, text: voice.money(minor, currency), from };
};

import type { Chart, Dose } from "#compute/facts.js";
import type { Block, Cell, Inline } from "#handout/handout.js";
import { placeText } from "#problems/place.js";
import { placedNameOn } from "../medicine-name.js";
import { type Page, plainOn } from "../page.js";

const cell = (inlines: Inline[], align: Cell["align"] = "center"): Cell => ({ inlines, align });
const text = (words: string): Inline => ({ kind: "text", text: words });

/** The chart to tick: a row a day, a column a medicine and time, in each cell a box and what to give. */
export function chartOn(page: Page, chart: Chart): Block {
  const { voice, view } = page;
  const nameOf = (id: string) => {
    const medicine = view.medicines.find((one) => one.id === id);
    return medicine ? placedNameOn(page, medicine) : id;
  };
  return {
    kind: "table",
    caption: [text(plainOn(page, "handout:chart.caption"))],
    head: [
      cell([text(plainOn(page, "handout:chart.day"))], "start"),
      ...chart.columns.map(({ medicine, at }) =>
        cell([{ kind: "text", text: nameOf(medicine), strong: true }, text(` ${voice.time(at)}`)]),
      ),
    ],
    rows: chart.rows.map(({ day, cells }) => [
      cell([{ kind: "when", iso: day, text: voice.shortDay(day), from: placeText(firstOf(cells, page)) }], "start"),
      ...cells.map((dose) =>
        cell(dose ? [...tickedDose(page, dose, nameOf(dose.medicine)), ...moved(page, dose)] : []),
      ),
    ]),
    foot: [],
  };
}

const firstOf = (cells: (Dose | null)[], { plan }: Page) => cells.find((dose) => dose !== null)?.from ?? plan;

/** The name of the box of a dose. */
export const doseId = ({ medicine, number }: Dose): string => `dose-${medicine}-${number}`;

/** The time of a dose that the clocks have moved out of its column. */
const moved = ({ voice }: Page, { at, slot }: Dose): Inline[] =>
  at.endsWith(slot) ? [] : [text(` (${voice.time(at.slice(11))})`)];

function tickedDose(page: Page, dose: Dose, name: string): Inline[] {
  const { voice } = page;
  const { medicine, at, give, from } = dose;
  const amount = voice.shortAmount(give);
  const label = plainOn(page, "handout:chart.tick", { medicine: name, at: voice.dateTime(at) });
  return [
    { kind: "tick", label, id: doseId(dose) },
    text(" "),
    { kind: "dose", medicine, amount: give.value, unit: give.unit, text: amount, from: placeText(from) },
  ];
}

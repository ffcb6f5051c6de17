// Invented plans for measuring: as many as are asked for, and no two alike in names, words or days.
import { readFileSync } from "node:fs";
import { parse } from "yaml";

const syllables = ["Ba", "Cor", "Del", "Fen", "Gus", "Hol", "Im", "Jun", "Kes", "Lor", "Mab", "Nim", "Or", "Pip"];
const endings = ["bel", "da", "rick", "lo", "wyn", "sy", "tan", "mo", "ris", "ka", "nell", "po", "dy"];
const findings = ["thick", "thin", "dark", "clear", "little", "much", "pale", "old", "fresh", "sticky", "watery"];
const places = [
  "under the eye",
  "by the ear",
  "near the lip",
  "at the jaw",
  "below the nose",
  "on the side",
  "in front",
];

const of = (list, n) => list[n % list.length];
const example = parse(readFileSync("examples/dog-cheek-abscess/plan.yaml", "utf8"));

/** The n-th plan, with changes of its own. Its clinic profile is the example's. */
export function planOf(n, changes = {}) {
  const name = `${of(syllables, n)}${of(endings, Math.floor(n / 14))}`;
  const owner = `${of(endings, n + 3)} ${of(syllables, n + 5)}${n}`;
  const reason = `An abscess ${of(places, n)} with ${of(findings, n)} and ${of(findings, n * 3 + 1)} fluid. We opened it. Note ${n}.`;
  const care = [
    {
      ...example.care[0],
      course: [
        `change every day for ${2 + (n % 3)}-${5 + (n % 2)} days, first tomorrow`,
        `change every 2-3 days until day ${13 + (n % 4)}`,
        "maybe closure day 7-14",
      ],
    },
  ];
  return {
    ...example,
    case: `B-${n}`,
    patient: { ...example.patient, name },
    owner: { ...example.owner, name: owner, language: "en" },
    reason,
    care,
    booked: [],
    ...changes,
  };
}

/** As readPlan takes it. */
export function sourcesOf(plan) {
  const source = (file) => ({ file, bytes: new Uint8Array(readFileSync(file)) });
  return {
    plan: { file: "plan.json", bytes: new TextEncoder().encode(JSON.stringify(plan)) },
    clinic: source("examples/clinic.yaml"),
    prices: source("examples/prices.yaml"),
  };
}

const tonic = (n) => ({
  name: `tonic ${n + 1}`,
  tablet: "10 mg",
  give: "1 tablet",
  every: "12 h",
  for: `${4 + (n % 5)} days`,
  "last given": "08:30",
});

/** One thing that grows, the rest the same. */
export const growing = {
  visits: [14, 60, 180].map((days) => [
    `until day ${days}`,
    { care: [{ ...example.care[0], course: [`change every 2-3 days until day ${days}, first tomorrow`] }] },
  ]),
  medicines: [1, 4, 12].map((count) => [
    `${count}`,
    { medicines: Array.from({ length: count }, (_, n) => tonic(n)), estimate: undefined },
  ]),
  topics: [1, 3, 6].map((count) => [
    `${count}`,
    {
      care: [
        example.care[0].topic,
        "hot-spot",
        "ear-infection",
        "vomiting-diarrhoea",
        "respiratory-infection",
        "seizure",
      ]
        .slice(0, count)
        .map((topic, n) =>
          n === 0
            ? { ...example.care[0], course: ["recheck day 10"] }
            : n < 3
              ? { topic, site: "left cheek" }
              : { topic },
        ),
      estimate: undefined,
    },
  ]),
};

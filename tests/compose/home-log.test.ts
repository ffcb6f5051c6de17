import { expect, it } from "vitest";
import type { Facts, Statement } from "#compute/facts.js";
import { homeLog } from "#compute/home-log.js";
import { blocksIn } from "#handout/walk.js";
import { tables } from "../signs/help.js";
import { dog } from "./fixture.js";
import { composed } from "./shipped.js";

/** The columns of each table of the log of so many days. */
function columns(count: number): string[][] {
  const days = Array.from({ length: count }, (_, n) => `2026-03-${String(n + 2).padStart(2, "0")}`);
  const facts: Facts = { ...dog, log: { days, rows: dog.log.rows.map((row) => ({ ...row, days })) } };
  const log = composed(facts, "en").value?.sections.find(({ id }) => id === "log");
  return [...blocksIn({ sections: log ? [log] : [] })].flatMap((block) =>
    block.kind === "table"
      ? [block.head.slice(1).map(({ inlines: [head] }) => (head?.kind === "when" ? `${head.iso} ${head.text}` : ""))]
      : [],
  );
}

it.each([
  [1, [1]],
  [7, [7]],
  [8, [4, 4]],
  [14, [7, 7]],
  [15, [5, 5, 5]],
  [16, [6, 6, 4]],
])("a log of %i days stands in tables of %j days, each day once and in order", (count, sizes) => {
  const tables = columns(count);
  expect(tables.map(({ length }) => length)).toEqual(sizes);
  const days = tables.flat().map((head) => head.slice(0, 10));
  expect(days).toEqual([...new Set(days)].sort());
});

it("a date in a narrow head is never broken", () =>
  expect(columns(2)).toEqual([["2026-03-02 Mon, Mar\u00a02", "2026-03-03 Tue, Mar\u00a03"]]));

it("what is compared with the day before is not asked on the day of discharge", () => {
  const said = ["normal.swelling-down", "normal.pus-few-days"].map((id) => ({ ...dog.normal[0], id }) as Statement);
  const { days, rows } = homeLog({ ...dog, statements: said }, tables.log);
  const asked = Object.fromEntries(rows.map((row) => [row.id, row.days]));
  expect(asked).toMatchObject({ ate: days, lively: days, swelling: days.slice(1), fluid: days.slice(1) });

  const facts: Facts = { ...dog, log: { days, rows } };
  const section = composed(facts, "en").value?.sections.filter(({ id }) => id === "log") ?? [];
  const [table] = [...blocksIn({ sections: section })].filter((block) => block.kind === "table");
  const row = (question: string) =>
    table?.rows
      .find(([head]) => JSON.stringify(head).includes(question))
      ?.slice(1, 3)
      .map(({ inlines }) => inlines.map(({ kind }) => kind));
  expect(row("Less swelling")).toEqual([["text"], ["tick"]]);
  expect(row("Ate as usual")).toEqual([["tick"], ["tick"]]);
});

it("medicines are asked of on the days they are given at home, and the collar until the day it comes off", () => {
  const [medicine] = dog.medicines;
  const doses = ["2026-03-02T20:00", "2026-03-03T08:00"].map((at) => ({ ...medicine?.doses[0], at }));
  const medicines = [{ ...medicine, doses }] as Facts["medicines"];
  const collar = { ...dog.collar, until: { event: null, day: "2026-03-04" } } as Facts["collar"];
  const { rows } = homeLog({ ...dog, medicines, collar, statements: [] }, tables.log);
  const asked = Object.fromEntries(rows.map((row) => [row.id, row.days]));
  expect(asked["lively"]?.length).toBeGreaterThan(3);
  expect(asked["medicines"]).toEqual(["2026-03-02", "2026-03-03"]);
  expect(asked["collar"]).toEqual(["2026-03-02", "2026-03-03", "2026-03-04"]);
  const without = homeLog({ ...dog, medicines: [], collar: null, statements: [] }, tables.log).rows;
  expect(without.map(({ id }) => id)).toEqual(["ate", "lively"]);
});

it("a table asks nothing that is asked on none of its days", () => {
  const days = Array.from({ length: 14 }, (_, n) => `2026-03-${String(n + 2).padStart(2, "0")}`);
  const rows: Facts["log"]["rows"] = [
    { id: "ate", write: "tick", days },
    { id: "medicines", write: "tick", days: days.slice(0, 3) },
  ];
  const section =
    composed({ ...dog, log: { days, rows } }, "en").value?.sections.filter(({ id }) => id === "log") ?? [];
  const tables = [...blocksIn({ sections: section })].filter((block) => block.kind === "table");
  expect(tables.map((table) => table.rows.length)).toEqual([2, 1]);
});

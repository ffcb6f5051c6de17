import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { bodies } from "#compose/figures/drawings/bodies.js";
import { movedPath } from "#compose/figures/drawings/stroke.js";
import { marks } from "#compose/figures/site-marks.js";
import type { Facts } from "#compute/facts.js";
import type { Figure } from "#handout/handout.js";
import { blocksIn } from "#handout/walk.js";
import { cat, dog } from "./fixture.js";
import { composed } from "./shipped.js";

const figuresOf = (facts: Facts, language = "en"): Figure[] =>
  [...blocksIn(composed(facts, language).value ?? expect.fail())].filter((block) => block.kind === "figure");
const figure = (facts: Facts, id: string, language?: string) =>
  figuresOf(facts, language).find((one) => one.id === id) ?? expect.fail(id);
const numbersIn = (path: string) => (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

describe("only the drawings a case needs", () => {
  const drawn = (facts: Facts) => figuresOf(facts).map(({ id }) => id);
  it("a bandage to watch, and no compress, where the clinic bandages", () => {
    expect(drawn(dog)).toEqual(expect.arrayContaining(["wound-place", "bandage-watch", "collar-fit"]));
    expect(drawn(dog)).not.toContain("warm-compress");
  });
  it("a compress, and no bandage, where the owner cleans", () => {
    expect(drawn(cat)).toEqual(expect.arrayContaining(["wound-place", "warm-compress", "collar-fit"]));
    expect(drawn(cat)).not.toContain("bandage-watch");
  });
  it("nothing where there is nothing to show", () => {
    const bare = {
      ...dog,
      collar: null,
      steps: [],
      care: dog.care.map((one) => ({ ...one, site: null, bandage: null })),
    };
    const none = ["wound-place", "warm-compress", "bandage-watch", "collar-fit"];
    expect(drawn(bare).filter((id) => none.includes(id))).toEqual([]);
  });
});

describe.each(["en", "es"])("the drawings in %s", (language) => {
  it("are told in words, and stand within their frame at no more than 180 points high", () => {
    for (const facts of [dog, cat])
      for (const id of ["wound-place", "bandage-watch", "warm-compress", "collar-fit"]) {
        const found = figuresOf(facts, language).find((one) => one.id === id);
        if (!found) continue;
        expect(found.alt.length).toBeGreaterThan(30);
        expect(found.height).toBeLessThanOrEqual(180);
        for (const { x, y } of found.labels) expect([x >= 0, x <= found.width, y <= found.height]).not.toContain(false);
      }
  });
});

describe("where it is sore", () => {
  const care = (side: "left" | "right" | null, site = "cheek") => ({
    ...dog,
    care: dog.care.map((one) => ({ ...one, side, site })),
  });
  const ring = (facts: Facts) => figure(facts, "wound-place").shapes.at(-1)?.path ?? "";

  it("is ringed on the side it is on: right is the mirror of left", () => {
    const [left = 0] = numbersIn(ring(care("left")));
    const [right = 0] = numbersIn(ring(care("right")));
    const { width } = figure(care("left"), "wound-place");
    expect(left + 8).toBeLessThan(width / 2);
    expect(left + right + 16).toBeCloseTo(width, -1);
  });
  it("is told with its side", () => {
    expect(figure(care("right"), "wound-place").alt).toContain("right cheek");
    expect(figure(care("right"), "wound-place", "es").alt).toContain("mejilla derecha");
  });
  it("shows both sides where both are sore", () => {
    const both = { ...dog, care: [...care("left").care, ...care("right").care] };
    expect(figure(both, "wound-place").width).toBeGreaterThan(2 * figure(dog, "wound-place").width);
  });
  it("is drawn for every site but those that may be two legs, and on the animal", () => {
    const sites: { id: string }[] = JSON.parse(readFileSync("shared/sites.json", "utf8"));
    const unmarked = sites.map(({ id }) => id).filter((id) => !marks[id]);
    expect(unmarked.sort()).toEqual(["leg", "lower-leg", "paw", "upper-leg"]);
    for (const one of Object.values(marks))
      for (const [x, y] of [...one.dog, ...one.cat]) expect([x > 15, x < 235, y > 15, y < 152]).not.toContain(false);
  });
});

it("a drawing can be moved there and back", () => {
  for (const { path } of [...bodies.dog, ...bodies.cat]) {
    const there = movedPath(path, { x: 0, y: 0, mirror: 240 });
    const back = numbersIn(movedPath(there, { x: 0, y: 0, mirror: 240 }));
    for (const [i, number] of numbersIn(path).entries()) expect(back[i]).toBeCloseTo(number, 0);
  }
});

it("a side of an animal, a code and a tick are never turned over: a wound of the left side stays on the left", () => {
  const upright = (facts: Facts, id: string) => figure(facts, id).shapes.filter(({ upright }) => upright !== undefined);
  for (const facts of [dog, cat]) expect(upright(facts, "wound-place")).toEqual(figure(facts, "wound-place").shapes);
  expect(upright(dog, "visit-code")).toHaveLength(1);
  expect(upright(cat, "warm-compress").length).toBeGreaterThan(2);
  expect(upright(dog, "collar-fit")).toHaveLength(1);
});

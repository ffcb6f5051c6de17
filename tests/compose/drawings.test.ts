import { describe, expect, it } from "vitest";
import { bodyWrap, headWrap } from "#compose/figures/drawings/wraps.js";
import { marks } from "#compose/figures/site-marks.js";
import type { Facts, Species } from "#compute/facts.js";
import type { Drawing, Figure, Label } from "#handout/handout.js";
import { blocksIn } from "#handout/walk.js";
import { facesOf } from "#render/pdf/faces.js";
import { allFonts } from "../pdf/all-fonts.js";
import { dog } from "./fixture.js";
import { composed, locales } from "./shipped.js";

type Box = { left: number; right: number; top: number; bottom: number };
const languages = ["en", "es", "de", "fr", "pt-BR", "vi", "zh-Hans", "ar"];
const bandages = ["tie-over", "body-wrap", "limb-wrap", "head-wrap", "splint"];
const from = dog.care[0]?.from ?? expect.fail();
const step = (id: string, values = {}) => ({
  id: `steps.${id}`,
  topics: ["abscess-home-care"],
  values,
  from,
  times: [],
});

/** A case with every drawing of ours: a bandage of this kind on this species, a compress, breaths to count and a collar. */
function factsWith(species: Species, bandage: string, site = "flank", side: "left" | "right" = "right"): Facts {
  const topic = bandage === "splint" ? "splint-or-cast" : "open-wound-clinic-bandage";
  const care = dog.care.map((one) => ({ ...one, topic, bandage: bandage === "splint" ? null : bandage, site, side }));
  const steps = [
    step("warm-compress", { minutes: { value: "5", unit: "min" } }),
    step("count-breaths", { time: { value: "1", unit: "min" } }),
  ];
  return { ...dog, patient: { ...dog.patient, species }, care, steps };
}
const drawn = ["wound-place", "bandage-watch", "warm-compress", "breaths", "collar-fit"];
const figuresOf = (facts: Facts, language = "en"): Figure[] =>
  [...blocksIn(composed(facts, language).value ?? expect.fail())].filter((block) => block.kind === "figure");
const figure = (facts: Facts, id: string, language = "en") =>
  figuresOf(facts, language).find((one) => one.id === id) ?? expect.fail(id);

const numbersIn = (path: string) => (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
/** The box of a path of absolute M, L, C and Z: all its points, those that bend a curve too, lie no further out. */
function boxOf(path: string): Box {
  const points = numbersIn(path);
  const [xs, ys] = [0, 1].map((odd) => points.filter((_, i) => i % 2 === odd)) as [number[], number[]];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

const apart = (one: Box, other: Box) =>
  one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top;

/** A drawing, and the same for a narrow screen. */
const bothOf = (figure: Figure): Drawing[] => [figure, ...(figure.narrow ? [figure.narrow] : [])];

/** Where a label lies on paper, in the font it is drawn with there. */
function labelBox({ text, x, y, size, align }: Label): Box {
  const width = facesOf(allFonts, text).regular.width(text, size);
  const left = align === "start" ? x : align === "center" ? x - width / 2 : x - width;
  return { left, right: left + width, top: y - 0.75 * size, bottom: y + 0.25 * size };
}

it.each(languages)(
  "the words of a short course and of a long one in %s lie in its strip, and on no mark or other words",
  (language) => {
    for (const last of ["2026-03-05", "2026-03-16"]) {
      const visits = dog.course.visits.filter(({ latest }) => latest <= last);
      const whole = figure({ ...dog, course: { ...dog.course, visits } }, "course-strip", language);
      for (const strip of bothOf(whole)) {
        const labels = strip.labels.map(labelBox);
        for (const [n, one] of labels.entries()) {
          expect([strip.labels[n]?.text, one.left >= 0 && one.right <= strip.width]).toEqual([
            strip.labels[n]?.text,
            true,
          ]);
          for (const other of labels.slice(n + 1)) expect(apart(one, other)).toBe(true);
        }
      }
    }
  },
);

describe.each(languages)("the words of the drawings in %s", (language) => {
  it("tell each drawing, lie in its box and on no other words", () => {
    expect(locales.tags).toContain(language);
    for (const [i, bandage] of bandages.entries()) {
      const found = figuresOf(factsWith(i % 2 === 0 ? "dog" : "cat", bandage), language);
      expect(found.map(({ id }) => id)).toEqual(expect.arrayContaining(drawn));
      for (const one of found.filter((one) => drawn.includes(one.id)))
        for (const { labels, width, height } of bothOf(one)) {
          const { id, alt } = one;
          expect([id, alt.length > (language === "zh-Hans" ? 12 : 30)]).toEqual([id, true]);
          const boxes = labels.map(labelBox);
          for (const [n, box] of boxes.entries()) {
            const inside = box.left >= 0 && box.right <= width && box.top >= 0 && box.bottom <= height + 2;
            expect([id, labels[n]?.text, inside]).toEqual([id, labels[n]?.text, true]);
            for (const other of boxes.slice(n + 1))
              expect([id, labels[n]?.text, apart(box, other)]).toEqual([id, labels[n]?.text, true]);
          }
        }
    }
  });
});

describe.each(["dog", "cat"] as const)("the drawings of a %s", (species) => {
  it.each(bandages)("%s: each of its lines lies in the box", (bandage) => {
    for (const id of drawn) {
      for (const { shapes, width, height } of bothOf(figure(factsWith(species, bandage), id)))
        for (const { path, width: line = 0 } of shapes.filter(({ path }) => !/[a-zHV]/.test(path))) {
          const { left, right, top, bottom } = boxOf(path);
          expect([id, path, left >= -line, right <= width + line, top >= -line, bottom <= height + line]).toEqual([
            ...[id, path, true, true, true, true],
          ]);
        }
    }
  });

  it.each([
    ["body", bodyWrap],
    ["head", headWrap],
  ] as const)("no drop falls on the line of the animal below a %s wrap", (_, wrap) => {
    const { holds, drops } = wrap(species);
    for (const { path } of holds) {
      const points = numbersIn(path);
      for (const [x, y] of drops)
        for (let i = 0; i + 1 < points.length; i += 2) {
          const [px = 0, py = 0] = [points[i], points[i + 1]];
          expect([px, py, Math.abs(px - x) > 5 || Math.abs(py - y) > 8]).toEqual([px, py, true]);
        }
    }
  });

  it("rings every site on the left and on the right inside the drawing, one the mirror of the other", () => {
    for (const site of Object.keys(marks)) {
      const [left, right] = (["left", "right"] as const).map((side) => {
        const { shapes, width, height } = figure(factsWith(species, "tie-over", site, side), "wound-place");
        const [x = 0, y = 0, r = 0] = numbersIn(shapes.at(-1)?.path ?? "");
        const line = (shapes.at(-1)?.width ?? 0) / 2;
        const inside = x - line >= 0 && x + 2 * r + line <= width && y - r - line >= 0 && y + r + line <= height;
        expect([site, side, inside]).toEqual([site, side, true]);
        return { middle: x + r, width };
      });
      expect((left?.middle ?? 0) + (right?.middle ?? 0)).toBeCloseTo(left?.width ?? 0, -1);
    }
  });
});

it("a sleeping cat has a cat's ears", () => {
  const [one, other] = (["dog", "cat"] as const).map(
    (species) => figure(factsWith(species, "tie-over"), "breaths").shapes,
  );
  expect(one?.[0]?.path).not.toBe(other?.[0]?.path);
});

/** Which eye or ear a medicine is for; and what is not made for the mouth. */
import { describe, expect, test } from "vitest";
import { codes, doses, only, q, told, type Written } from "./help.js";

const drops: Written = { name: "x", drops: "0.3 %", route: "left eye", give: q("1 drop") };

describe("an eye or an ear", () => {
  test.each(["left eye", "right eye", "both eyes", "left ear", "right ear", "both ears"] as const)("%s", (route) => {
    expect(codes([{ ...drops, route }])).not.toContain("eye-or-ear-not-said");
    expect(only({ ...drops, route }).route).toBe(route);
  });

  test.each(["eye", "ear"] as const)("the %s without a side is asked about, and stops nothing", (route) => {
    const { value, problems } = doses([{ ...drops, route }]);
    expect(value).not.toBeNull();
    expect(problems).toContainEqual(
      expect.objectContaining({
        code: "eye-or-ear-not-said",
        severity: "ask",
        values: { medicine: "x", context: route },
      }),
    );
  });

  test("both are told where the route is written", () => {
    expect(told("eye-or-ear-not-said", { ...drops, route: "eye" })).toEqual([
      { at: "0/route", medicine: "x", context: "eye" },
    ]);
    expect(told("route-doubtful", { name: "x", patch: "25 mcg/h", give: q("1 patch") } as Written)).toEqual([
      { at: "0/route", medicine: "x", context: "patch" },
    ]);
  });

  test("rules for the ear hold for either", () => {
    const written = (route: "left ear" | "skin"): Written => ({
      name: "mirtazapine",
      ointment: "20 mg/g",
      route,
      give: { value: "1.5", unit: "in" },
      every: "24 h",
    });
    const cat = { species: "cat", weight: q("4.2 kg") } as const;
    expect(codes([written("left ear")], cat)).toEqual(codes([written("skin")], cat));
  });
});

test.each<Written>([
  { name: "x", drops: "0.3 %", give: q("1 drop") },
  { name: "x", ointment: "1 %", give: { value: "1", unit: "application" } },
  { name: "x", spray: "1 %", give: { value: "1", unit: "spray" } },
])("what would go by mouth for want of a route is asked about: %j", (written) => {
  expect(codes([written])).toContain("route-doubtful");
  expect(codes([{ name: "x", tablet: q("5 mg"), give: q("1 tablet") }])).not.toContain("route-doubtful");
});

import { describe, expect, it } from "vitest";
import { clinicText, dogText, read, seen } from "./help.js";

const inZone = (zone: string) => clinicText.replace(/^time zone:.*$/m, `time zone: ${zone}`);

describe("a clinic in no time zone", () => {
  it.each<[string, string]>([
    ['""', '13:13 ["]'],
    ["Chicago", "13:12 [Chicago]"],
    ["America/Chicgo", "13:12 [America/Chicgo]"],
    ['"2026-03-08 02:30"', "13:13 [2026-03-08 02:30]"],
  ])("%s is told, and nothing is reckoned", (zone, pointed) => {
    expect(seen(dogText, inZone(zone))).toEqual([`zone-unknown clinic.yaml ${pointed}`]);
    expect(read(dogText, inZone(zone)).value).toBeNull();
  });

  it("is not one in the zone it has", () => {
    expect(read(dogText, inZone("America/Chicago")).value).not.toBeNull();
  });
});

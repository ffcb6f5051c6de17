import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterEach, beforeEach, expect, it } from "vitest";
import { saved } from "#io/saved.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hearthsheet-saved-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

it("a file or a folder that is not there wakes nobody until it is made", async () => {
  const [file, inside] = [join(folder, "clinic.yaml"), join(folder, "overrides")];
  let woken = false;
  const waiting = saved([file, inside]).then(() => {
    woken = true;
  });
  // What watches them has looked twice.
  await pause(600);
  expect(woken).toBe(false);
  mkdirSync(inside);
  await waiting;

  const again = saved([file, inside]);
  await pause(300);
  writeFileSync(file, "name: Juniper Row\n");
  await again;
});

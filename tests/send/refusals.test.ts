import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import * as ledgerFile from "#io/ledger.js";
import { alone } from "#io/lock.js";
import { stackTrace } from "../cli/hearthsheet.js";
import { packages, type Server, send, smtpServer } from "./help.js";

vi.mock("#io/ledger.js", async (original) => {
  const real = await original<typeof ledgerFile>();
  return { ...real, addToLedger: vi.fn(real.addToLedger) };
});

let folder = "";
let server: Server;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "refuse-"));
  server = await smtpServer(() => "take");
});
afterEach(async () => {
  vi.mocked(ledgerFile.addToLedger).mockReset();
  vi.mocked(ledgerFile.addToLedger).mockImplementation(
    (await vi.importActual<typeof ledgerFile>("#io/ledger.js")).addToLedger,
  );
  await server.close();
  rmSync(folder, { recursive: true });
});

/** A built package whose letter has another To line. */
async function packageTo(line: string): Promise<string[]> {
  const names = await packages(folder, 1);
  const path = join(folder, "case-0/handout.eml");
  const letter = Buffer.from(readFileSync(path, "latin1").replace(/^To: .*\r\n/m, line), "latin1");
  writeFileSync(path, letter);
  const record = join(folder, "case-0/record.json");
  const built = createHash("sha256").update(letter).digest("hex");
  writeFileSync(record, readFileSync(record, "utf8").replace(/(?<="sha256":")[0-9a-f]{64}/, built));
  return names;
}

describe("a letter", () => {
  it.each([
    ["to nobody", "", "is to nobody"],
    ["to two addresses", "To: a@example.org, b@example.org\r\n", "more than one address"],
    ["to a group of two", "To: family: a@example.org, b@example.org;\r\n", ""],
  ])("%s is not sent", async (_, line, told) => {
    const { code, err } = await send(folder, await packageTo(line), { smtp: server.url });
    expect([code, server.attempts()]).toEqual([1, 0]);
    expect(err).toContain(told);
    expect(err).not.toMatch(stackTrace);
  });

  it("to an address in UTF-8 is refused where the server knows none (RFC 6531), and the others still go", async () => {
    await server.close();
    server = await smtpServer(() => "take", { hideSMTPUTF8: true });
    const names = await packages(folder, 2, (i) => (i === 0 ? "josé@example.org" : "ama@example.org"));
    const { code, out } = await send(folder, names, { smtp: server.url });
    expect([code, [...server.taken.keys()]]).toEqual([1, ["ama@example.org"]]);
    expect(out).toContain("case-0: the server will not take it");
  });
});

describe("the ledger", () => {
  it("that another process holds stops it all, before anything is sent", async () => {
    const names = await packages(folder, 1);
    mkdirSync(join(folder, "state"));
    const { code, err } = await alone(join(folder, "state"), () => send(folder, names, { smtp: server.url }));
    expect([code, server.attempts()]).toEqual([2, 0]);
    expect(err).toContain("ELOCKED");
  });

  it("keeps two that send at once apart: every owner gets one", async () => {
    const names = await packages(folder, 6);
    const both = await Promise.all([1, 2].map(() => send(folder, names, { smtp: server.url })));
    expect(both.map(({ code }) => code)).toEqual([0, 0]);
    expect([...server.taken.values()].map((letters) => letters.length)).toEqual([1, 1, 1, 1, 1, 1]);
  });

  const full = () => Promise.reject(Object.assign(new Error("no room"), { code: "ENOSPC" }));

  it("on a full disk: no letter is ended that it does not know of", async () => {
    const names = await packages(folder, 3);
    vi.mocked(ledgerFile.addToLedger).mockImplementation(full);
    const { code, err } = await send(folder, names, { smtp: server.url });
    expect([code, server.taken.size]).toEqual([2, 0]);
    expect(err).toContain("ENOSPC");
    expect(err).not.toMatch(stackTrace);
  });

  it("on a disk that fills between a letter and its line: that one is unsure, and is not sent again", async () => {
    const names = await packages(folder, 3);
    const { addToLedger } = await vi.importActual<typeof ledgerFile>("#io/ledger.js");
    let lines = 0;
    vi.mocked(ledgerFile.addToLedger).mockImplementation((...given) =>
      ++lines === 4 ? full() : addToLedger(...given),
    );
    const first = await send(folder, names, { smtp: server.url });
    expect([first.code, server.taken.size]).toEqual([2, 2]);
    vi.mocked(ledgerFile.addToLedger).mockImplementation(addToLedger);
    const second = await send(folder, names, { smtp: server.url });
    expect([second.code, server.taken.size]).toEqual([1, 3]);
    expect(second.err).toContain("may have been sent before");
    expect([...server.taken.values()].map((letters) => letters.length)).toEqual([1, 1, 1]);
  });
});

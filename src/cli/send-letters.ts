import { dirname } from "node:path";
import { readLedger } from "#io/ledger.js";
import { alone } from "#io/lock.js";
import { ledgerPath, privateFolder } from "#io/state.js";
import { systemCode } from "#io/system-error.js";
import { type Problem, problem } from "#problems/problem.js";
import { readEntry, type Standing, standing } from "#send/dispatch.js";
import { readServer, type Server } from "#send/server.js";
import { confirmed } from "./confirm.js";
import type { Desk } from "./desk.js";
import type { ExitCode } from "./exit-code.js";
import { type Letter, readLetter } from "./letters.js";
import { casesOf, noteSent } from "./note-sent.js";
import type { SendOptions } from "./options.js";
import { type Post, postAll } from "./post.js";
import { sayer } from "./say.js";

const at = { file: "", line: 1, column: 1, length: 1 };

/** Sends the letters of packages: reads all, shows all, asks, then sends. */
export async function sendLetters(desk: Desk, folders: readonly string[], options: SendOptions): Promise<ExitCode> {
  const say = sayer(desk);
  const server = options.dryRun ? { value: null, problems: [] } : readServer(options.smtp);
  for (const found of server.problems) say(found);
  if (server.problems.length > 0) return 2;
  const read = await Promise.all(folders.map((folder) => readLetter(folder, desk)));
  const found = read.flatMap(({ problems }) => problems);
  for (const one of found) say(one);
  const unread = found.filter(({ severity }) => severity === "stop");
  const letters = read.flatMap(({ value }) => value ?? []);
  const ledger = options.ledger ?? ledgerPath();
  try {
    await privateFolder(dirname(ledger));
    const code = await alone(dirname(ledger), () => sendRead(desk, letters, server.value, { ...options, ledger }));
    return unread.length > 0 && code === 0 ? 1 : code;
  } catch (error) {
    const detail = systemCode(error);
    if (detail === null) throw error;
    say(problem("ledger-unusable", at, { path: ledger, detail }));
    return 2;
  }
}

async function sendRead(
  desk: Desk,
  letters: readonly Letter[],
  server: Server | null,
  options: SendOptions & { ledger: string },
): Promise<ExitCode> {
  const say = sayer(desk);
  const entries = (await readLedger(options.ledger)).flatMap((line) => readEntry(line) ?? []);
  const sorted = letters.map((letter, i) => ({ letter, stands: standsAt(letters, i, standing(entries, letter.key)) }));
  // Whoever has said yes beforehand is not asked, and what is said then goes into logs: it names nobody.
  for (const { letter, stands } of sorted)
    if (!(options.yes && server && stands === "new")) say(listing(letter, stands));
  const resend = options.unsure === "resend";
  const ready = sorted.filter(({ stands }) => stands === "new" || (resend && stands === "unsure"));
  const before = sorted.filter(({ stands }) => stands === "sent").length;
  const left = letters.length - before - ready.length;
  if (ready.length === 0 || !server) {
    // What was sent before a crash is noted now.
    const cases = server ? await casesOf(options.case) : { value: [], problems: [] };
    const untold = [...cases.problems, ...(await noteSent(cases.value ?? [], letters, options.ledger))];
    for (const found of untold) say(found);
    if (untold.length > 0) return 2;
    if (ready.length === 0) say(problem("send-nothing", at, {}));
    return left > 0 ? 1 : 0;
  }
  if (!options.yes && !(await confirmed(desk, ready.length))) {
    say(problem("send-not-confirmed", at, { count: ready.length }));
    return 2;
  }
  const cases = await casesOf(options.case);
  if (cases.problems.length > 0) {
    for (const found of cases.problems) say(found);
    return 2;
  }
  const post: Post = { desk, server, ...options };
  const tally = await postAll(
    post,
    ready.map(({ letter }) => letter),
  );
  const untold = await noteSent(cases.value ?? [], letters, options.ledger);
  for (const found of untold) say(found);
  say(problem("send-done", at, { ...tally, before, unsure: tally.unsure + left }));
  return tally.sent === ready.length && left === 0 && untold.length === 0 ? 0 : 1;
}

/** The same person and revision twice in one command are one letter. */
const standsAt = (letters: readonly Letter[], index: number, stands: Standing): Standing =>
  letters.findIndex(({ key }) => key === letters[index]?.key) < index ? "sent" : stands;

function listing({ folder: path, to, language, revision, review: context }: Letter, stands: Standing): Problem {
  if (stands === "sent") return problem("letter-sent-before", at, { path });
  if (stands === "unsure") return problem("letter-unsure-before", at, { path });
  return problem("letter-ready", at, { path, to, language, revision, context });
}

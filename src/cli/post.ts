import { setTimeout as pause } from "node:timers/promises";
import { addToLedger } from "#io/ledger.js";
import { deliver } from "#io/smtp.js";
import { problem } from "#problems/problem.js";
import type { Entry } from "#send/dispatch.js";
import { type Verdict, verdictOn } from "#send/fault.js";
import type { Server } from "#send/server.js";
import type { Desk } from "./desk.js";
import type { Letter } from "./letters.js";
import type { SendOptions } from "./options.js";
import { sayer } from "./say.js";

export type Post = Pick<SendOptions, "tries" | "wait" | "timeout"> & { desk: Desk; server: Server; ledger: string };
export type PostTally = { sent: number; later: number; refused: number; unsure: number };

/** A server that is away for so many letters on end is left alone for the rest of the round. */
const giveUpAfter = 3;
const at = { file: "", line: 1, column: 1, length: 1 };

/** Sends letters in rounds: what a server does not take now is tried again after a pause, each twice as long as the last. */
export async function postAll(post: Post, letters: readonly Letter[]): Promise<PostTally> {
  const { desk, tries, wait } = post;
  const say = sayer(desk);
  const tally: PostTally = { sent: 0, later: 0, refused: 0, unsure: 0 };
  let left: Left[] = letters.map((letter) => ({ letter, detail: "" }));
  for (let round = 1; left.length > 0; round++) {
    const { again, over } = await postRound(post, left, tally);
    left = again;
    if (over || round >= tries || left.length === 0) break;
    const seconds = wait * 2 ** (round - 1);
    say(problem("send-waits", at, { letters: left.length, seconds: String(seconds) }));
    await pause(seconds * 1000);
  }
  for (const { letter, detail } of left) say(problem("letter-later", at, { path: letter.folder, detail }), letter);
  return { ...tally, later: left.length };
}

/** A letter that is still to be sent, and why it was not. */
type Left = { letter: Letter; detail: string };

/** again: what is left to be tried; over: no letter will be taken by this server. */
async function postRound(
  post: Post,
  letters: readonly Left[],
  tally: PostTally,
): Promise<{ again: Left[]; over: boolean }> {
  const say = sayer(post.desk);
  const again: Left[] = [];
  let away = 0;
  for (const [i, { letter }] of letters.entries()) {
    post.desk.terminal.progress(`${tally.sent}/${letters.length + tally.sent - i} ${letter.folder}`);
    const path = letter.folder;
    const { verdict, detail, connected } = await postOne(post, letter);
    away = connected ? 0 : away + 1;
    if (verdict === "sent") {
      tally.sent += 1;
      say(problem("letter-sent", at, { path }), letter);
    } else if (verdict === "never") {
      tally.refused += 1;
      say(problem("letter-refused", at, { path, detail }), letter);
    } else if (verdict === "unsure") {
      tally.unsure += 1;
      say(problem("letter-unsure", at, { path, detail }), letter);
    } else {
      again.push({ letter, detail });
      if (verdict === "all") say(problem("server-refuses", at, { detail }));
      if (verdict === "all" || away >= giveUpAfter)
        return { again: [...again, ...letters.slice(i + 1)], over: verdict === "all" };
    }
  }
  return { again, over: false };
}

type Posted = { verdict: Verdict | "sent"; detail: string; connected: boolean };

/** The ledger knows before the server can have the whole letter, and again when it has answered. */
async function postOne({ server, ledger, timeout }: Post, { key, from, to, bytes }: Letter): Promise<Posted> {
  const enter = (state: Entry["state"]) =>
    addToLedger(ledger, { key, state, at: new Date().toISOString() } satisfies Entry);
  let entering: Promise<void> | null = null;
  let handed = false;
  const result = await deliver(server, { from, to, bytes }, timeout * 1000, async () => {
    entering = enter("handing");
    await entering;
    handed = true;
  });
  if (result.taken) {
    await enter("sent");
    return { verdict: "sent", detail: "", connected: true };
  }
  const verdict = verdictOn(result, handed);
  if (entering && verdict !== "unsure") {
    await entering;
    await enter("refused");
  }
  return { verdict, detail: String(result.reply ?? result.code), connected: result.reply !== null };
}

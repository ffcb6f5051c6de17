import { confirm, isCancel } from "@clack/prompts";
import { explain } from "#index.js";
import { problem } from "#problems/problem.js";
import type { Desk } from "./desk.js";
import { deskLanguage } from "./say.js";

/** Asks on the terminal; where there is none, nobody has said yes. */
export async function confirmed({ house }: Desk, count: number): Promise<boolean> {
  if (!process.stdin.isTTY || !process.stderr.isTTY) return false;
  const at = { file: "", line: 1, column: 1, length: 1 };
  const message = explain(problem("send-confirm", at, { count }), house, deskLanguage()).what;
  const answer = await confirm({ message, initialValue: false, output: process.stderr });
  return !isCancel(answer) && answer;
}

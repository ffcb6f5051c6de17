import { note, stop } from "./kind.js";

type Nothing = Record<never, never>;
type Letter = { path: string };

/** The built e-mails and the server they go through. Nothing here repeats a password; only the listing names an owner. */
export const sendKinds = {
  "package-missing": stop<Letter>(),
  "package-no-letter": stop<Letter>(),
  "package-several-letters": stop<Letter & { known: readonly string[] }>(),
  "package-changed": stop<Letter>(),
  "letter-no-address": stop<Letter>(),
  "letter-two-addresses": stop<Letter>(),
  "smtp-missing": stop<Nothing>(),
  "smtp-unreadable": stop<Nothing>(),
  "send-confirm": note<{ count: number }>(),
  "send-not-confirmed": stop<{ count: number }>(),
  "ledger-unusable": stop<{ path: string; detail: string }>(),

  // What is about to happen to each letter, and what came of it.
  "letter-ready": note<Letter & { to: string; language: string; revision: number; context: string }>(),
  "letter-sent-before": note<Letter>(),
  "letter-unsure-before": note<Letter>(),
  "letter-sent": note<Letter>(),
  "letter-later": note<Letter & { detail: string }>(),
  "letter-refused": stop<Letter & { detail: string }>(),
  "letter-unsure": stop<Letter & { detail: string }>(),
  "server-refuses": stop<{ detail: string }>(),
  "send-waits": note<{ letters: number; seconds: string }>(),
  "send-nothing": note<Nothing>(),
  "send-done": note<{ sent: number; before: number; later: number; refused: number; unsure: number }>(),
};

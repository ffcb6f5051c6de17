import { format } from "date-fns/format";
import PostalMime from "postal-mime";
import { type Outcome, type Problem, reviewOf } from "#index.js";
import { readPackage } from "#io/read-package.js";
import { sha256 } from "#io/sha256.js";
import { problem, stops } from "#problems/problem.js";
import { keyOf } from "#send/dispatch.js";
import { outgoing } from "#send/outgoing.js";
import { ageOf } from "./clock.js";
import type { Desk } from "./desk.js";

/** A built e-mail, ready to go out. key: the person and revision, in the ledger. */
export type Letter = {
  folder: string;
  key: string;
  from: string;
  to: string;
  language: string;
  review: "reviewed" | "unreviewed";
  caseId: string;
  revision: number;
  bytes: Uint8Array;
  /** Of the letter as it was built. */
  sha256: string;
};

/** The letter of a package, as its own headers tell whom it is to and when it was issued: not on a day to come. */
export async function readLetter(folder: string, { house }: Desk): Promise<Outcome<Letter>> {
  const { value: built, problems } = await readPackage(folder);
  if (!built) return { value: null, problems };
  const mail = await PostalMime.parse(built.letter);
  const at = { file: folder, line: 1, column: 1, length: 1 };
  const aged = ageOf(folder, (mail.date ?? "").slice(0, 10), format(new Date(), "yyyy-MM-dd"));
  if (stops(aged)) return { value: null, problems: aged };
  const refuse = (found: Problem): Outcome<Letter> => ({ value: null, problems: [found] });
  const to = (mail.to ?? []).flatMap(({ address }) => address ?? []);
  const [recipient] = to;
  if (!recipient) return refuse(problem("letter-no-address", at, { path: folder }));
  if (to.length > 1) return refuse(problem("letter-two-addresses", at, { path: folder }));
  const header = mail.headers.find(({ key }) => key === "content-language")?.value ?? "";
  const language = header.split(",")[0]?.trim() ?? "";
  // The language the words were first written in needs no review.
  const original = reviewOf(house, language) === "original";
  const recorded = built.languages.find((one) => one.language === language)?.review;
  const { caseId, revision } = built;
  return {
    value: {
      folder,
      key: keyOf({ caseId, revision, address: recipient }),
      from: mail.from?.address ?? "",
      to: recipient,
      language,
      review: original || recorded === "reviewed" ? "reviewed" : "unreviewed",
      caseId,
      revision,
      bytes: outgoing(built.letter),
      sha256: sha256(built.letter),
    },
    problems: aged,
  };
}

import { createHash } from "node:crypto";
import { TZDate } from "@date-fns/tz";
import { format } from "date-fns";
import MailComposer from "nodemailer/lib/mail-composer";
import type { Handout } from "#handout/handout.js";
import { type Outcome, problem } from "#problems/problem.js";
import { htmlOf } from "./html.js";
import { address, line } from "./safe.js";
import { textOf } from "./text.js";

/**
 * What goes with the letter: the finished files of the same handout. calendar: iCalendar text, with its METHOD; cancelled: the visits
 * that will not be. */
export type Attachments = {
  pdf: Uint8Array | null;
  html: Uint8Array | null;
  calendar: string | null;
  cancelled?: Uint8Array | null;
};

/**
 * The handout's letter as a whole message (RFC 5322, UTF-8): text and HTML in alternative parts, the calendar as a third
 * (RFC 6047) and as a file, and the papers attached. It opens as an unsent draft. Its date is when the handout was issued;
 * its Message-ID and boundaries follow from the letter, so the same letter gives the same bytes.
 * Problems: "email-sender-missing", "email-recipient-missing".
 */
export async function renderEmail(handout: Handout, files: Attachments): Promise<Outcome<Uint8Array>> {
  const { letter } = handout;
  const at = { file: "handout.eml", line: 1, column: 1, length: 1 };
  if (!letter.from) return { value: null, problems: [problem("email-sender-missing", at, {})] };
  const { from, to } = letter;
  const idOf = (id: string) => `<${id.slice(0, 40)}@${domainOf(from.address)}>`;
  const spoken = { "Content-Language": letter.parts.map(({ language }) => language).join(", ") };
  const replaces = letter.replaces.map(idOf);
  const composer = new MailComposer({
    from: address(from),
    ...(to ? { to: address(to) } : {}),
    subject: line(letter.subject),
    date: dateOf(handout),
    messageId: idOf(letter.id),
    ...(replaces.length > 0 ? { inReplyTo: replaces.at(-1), references: replaces } : {}),
    headers: { "X-Unsent": "1", ...spoken },
    text: { content: textOf(letter), headers: spoken },
    html: { content: htmlOf(letter), headers: spoken },
    attachments: [
      attachment("handout.pdf", "application/pdf", files.pdf, handout.language),
      attachment("handout.html", "text/html; charset=utf-8", files.html, handout.language),
      attachment(
        "cancelled.ics",
        "text/calendar; charset=utf-8; method=CANCEL",
        files.cancelled ?? null,
        handout.language,
      ),
    ].flat(),
    ...(files.calendar === null ? {} : { icalEvent: calendarOf(files.calendar) }),
    disableFileAccess: true,
    disableUrlAccess: true,
    baseBoundary: createHash("sha256").update(`boundary ${letter.id}`).digest("hex").slice(0, 24),
    newline: "\r\n",
  });
  return { value: await composer.compile().build(), problems: to ? [] : [problem("email-recipient-missing", at, {})] };
}

/** The part of an address after its @, in ASCII: a Message-ID holds nothing else. */
const domainOf = (mailbox: string): string => {
  try {
    return new URL(`http://${mailbox.slice(mailbox.lastIndexOf("@") + 1)}`).hostname;
  } catch {
    return "hearthsheet.invalid";
  }
};

/** "Mon, 02 Mar 2026 16:30:00 -0600" (RFC 5322, 3.3), on the clinic's clock. */
function dateOf({ issued, zone }: Handout): string {
  const [year = 0, month = 1, day = 1, hour = 0, minute = 0] = issued.split(/\D/).map(Number);
  return format(new TZDate(year, month - 1, day, hour, minute, zone), "EEE, dd MMM yyyy HH:mm:ss xx");
}

function attachment(filename: string, contentType: string, content: Uint8Array | null, language: string) {
  if (content === null) return [];
  const headers = { "Content-Language": language };
  return [{ filename, contentType, content: Buffer.from(content), contentTransferEncoding: "base64", headers }];
}

function calendarOf(content: string) {
  const [, method = "PUBLISH"] = /^METHOD:([A-Z]+)\r$/m.exec(content) ?? [];
  return { method, filename: "rechecks.ics", content };
}

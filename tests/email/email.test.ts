import { createHash } from "node:crypto";
import fc from "fast-check";
import ICAL from "ical.js";
import { type AddressObject, type ParsedMail, simpleParser } from "mailparser";
import PostalMime from "postal-mime";
import { describe, expect, test } from "vitest";
import type { Section } from "#handout/handout.js";
import { renderEmail } from "#render/email/email.js";
import { calendar, files, handoutWith, messageOf, readByPython } from "./help.js";

const mailboxes = (one: ParsedMail["to"]) =>
  [one ?? []].flat().flatMap(({ value }: AddressObject) => value.map(({ name, address }) => [name, address]));
const section = (title: string, text: string): Section => ({
  kind: "section",
  id: "letter",
  level: 2,
  weight: "plain",
  title: [{ kind: "text", text: title }],
  blocks: [{ kind: "paragraph", role: "body", inlines: [{ kind: "text", text }] }],
});
const spanish = { language: "es", direction: "ltr" as const, lead: [], sections: [section("Título", "Aquí están.")] };
const english = {
  language: "en",
  direction: "ltr" as const,
  lead: [{ kind: "text" as const, text: "For staff" }],
  sections: [section("Title", "Here they are.")],
};
const letter = { parts: [spanish, english] };
const headers = [
  "x-unsent",
  "content-language",
  "from",
  "to",
  "subject",
  "message-id",
  "date",
  "mime-version",
  "content-type",
];

describe("a whole message, as three readers of other makers read it", () => {
  test("mailparser", async () => {
    const read = await simpleParser(Buffer.from(await messageOf(letter)));
    expect([mailboxes(read.from), mailboxes(read.to)]).toEqual([
      [["Juniper Row Animal Clinic", "desk@juniper-row.example.org"]],
      [["Lucía Ferrer", "lucia.ferrer@example.org"]],
    ]);
    expect(read.subject).toBe("Bramble: care at home");
    expect(read.date?.toISOString()).toBe("2026-03-02T22:30:00.000Z");
    expect(read.headers.get("x-unsent")).toBe("1");
    expect(read.text).toContain("Aquí están.");
    const attached = read.attachments.map(({ filename, contentType }) => [filename, contentType]);
    expect(attached).toContainEqual(["handout.pdf", "application/pdf"]);
    expect(attached).toContainEqual(["handout.html", "text/html"]);
    expect(attached).toContainEqual(["rechecks.ics", "application/ics"]);
    expect(read.attachments.find(({ filename }) => filename === "handout.pdf")?.content).toEqual(files.pdf);
  });

  test("postal-mime", async () => {
    const read = await PostalMime.parse(await messageOf(letter), { attachmentEncoding: "arraybuffer" });
    expect(read.to).toEqual([{ name: "Lucía Ferrer", address: "lucia.ferrer@example.org" }]);
    expect(read.html).toContain('<html lang="es" dir="ltr">');
    const inBody = read.attachments.find(({ mimeType }) => mimeType === "text/calendar");
    expect(inBody?.method).toBe("PUBLISH");
    const asFile = read.attachments.find(({ filename }) => filename === "rechecks.ics");
    for (const part of [inBody, asFile]) {
      const text = new TextDecoder().decode(part?.content as ArrayBuffer);
      const found = new ICAL.Component(ICAL.parse(text)).getFirstSubcomponent("vevent");
      expect(found?.getFirstPropertyValue("uid")).toBe("1@example.org");
    }
  });

  test("Python's strict policy", async () => {
    const [read] = readByPython([await messageOf(letter)]);
    expect(read).toMatchObject({
      headers,
      to: [["Lucía Ferrer", "lucia.ferrer@example.org"]],
      date: "2026-03-02T16:30:00-06:00",
      defects: [],
      parts: [
        ["multipart/mixed", null, "es, en"],
        ["multipart/alternative", null, null],
        ["text/plain", null, "es, en"],
        ["text/html", null, "es, en"],
        ["text/calendar", null, null],
        ["application/pdf", "handout.pdf", "es"],
        ["text/html", "handout.html", "es"],
        ["application/ics", "rechecks.ics", null],
      ],
    });
    expect(read?.text.replaceAll("\r\n", "\n").trim()).toBe(
      "Título\n\nAquí están.\n\n----\n\nFor staff\n\nTitle\n\nHere they are.",
    );
  });
});

test("every line is ended by CRLF, ASCII and at most 998 octets long (RFC 5322, 2.1.1)", async () => {
  const text = Buffer.from(await messageOf({ subject: "á".repeat(2000) })).toString("latin1");
  expect(text.replaceAll("\r\n", "")).toMatch(/^[\x20-\x7e\t]*$/);
  for (const line of text.split("\r\n")) expect(line.length).toBeLessThanOrEqual(998);
});

test("the same letter gives the same bytes, and another revision another Message-ID", async () => {
  const hash = async (...given: Parameters<typeof messageOf>) =>
    createHash("sha256")
      .update(await messageOf(...given))
      .digest("hex");
  expect(await hash(letter)).toBe(await hash(structuredClone(letter)));
  const [first, second] = readByPython([await messageOf(), await messageOf({ id: "1e".repeat(32) })]);
  expect(first?.id).toMatch(/^<[0-9a-f]{40}@juniper-row\.example\.org>$/);
  expect(second?.id).not.toBe(first?.id);
});

test("a letter that takes the place of others is a reply to them (RFC 5322, 3.6.4)", async () => {
  const read = await simpleParser(Buffer.from(await messageOf({ replaces: ["aa".repeat(32), "bb".repeat(32)] })));
  const [first, second] = ["aa", "bb"].map((two) => `<${two.repeat(20)}@juniper-row.example.org>`);
  expect([read.inReplyTo, read.references]).toEqual([second, [first, second]]);
});

test("the calendar's own METHOD is the part's", async () => {
  const cancel = { ...files, calendar: calendar.replace("METHOD:PUBLISH", "METHOD:CANCEL") };
  const { value } = await renderEmail(handoutWith({}), cancel);
  const read = await PostalMime.parse(value ?? new Uint8Array());
  expect(read.attachments.find(({ mimeType }) => mimeType === "text/calendar")?.method).toBe("CANCEL");
});

test("without a sender there is no message; without a recipient a draft to nobody", async () => {
  const unsent = await renderEmail(handoutWith({ from: null }), files);
  expect([unsent.value, unsent.problems.map(({ code }) => code)]).toEqual([null, ["email-sender-missing"]]);
  const draft = await renderEmail(handoutWith({ to: null }), files);
  expect(draft.problems.map(({ code, severity }) => [code, severity])).toEqual([["email-recipient-missing", "note"]]);
  const [read] = readByPython([draft.value ?? new Uint8Array()]);
  expect(read).toMatchObject({ to: [], headers: headers.filter((name) => name !== "to") });
});

test("an address with a local part in UTF-8 is read back whole (RFC 6532)", async () => {
  const to = { name: "José", address: "josé@correo.example.org" };
  const read = await simpleParser(Buffer.from(await messageOf({ to })));
  expect(mailboxes(read.to)).toEqual([["José", "josé@correo.example.org"]]);
});

/** What an attacker, or a slip of the keyboard, puts into a name. */
const hostile = fc.oneof(
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.constantFrom(
    "Rex\r\nBcc: victim@example.org",
    "Rex\nTo: victim@example.org",
    "Rex\rX: y",
    "Rex\u2028Bcc: victim@example.org",
    "Rex\u0085Bcc: victim@example.org",
    'Rex" <victim@example.org>, "',
    "Rex, victim@example.org",
    "=?UTF-8?Q?=0D=0ABcc:_victim@example.org?=",
    "Rex (comment) <b>{{x}}</b>",
    "Rex;\0group: a@example.org, b@example.org;",
  ),
);

test("no name becomes a header, a second recipient or markup, wherever it stands", async () => {
  const cases = fc.sample(fc.tuple(hostile, hostile, hostile, hostile), {
    numRuns: Number(process.env["HEARTHSHEET_RUNS"] ?? 60),
    seed: 9,
  });
  const messages = await Promise.all(
    cases.map(([owner, clinic, subject, words]) =>
      messageOf({
        to: { name: owner, address: "lucia.ferrer@example.org" },
        from: { name: clinic, address: "desk@juniper-row.example.org" },
        subject: `s ${subject}`,
        parts: [{ ...spanish, sections: [section(words, words)] }],
      }),
    ),
  );
  for (const read of readByPython(messages)) {
    expect(read.headers).toEqual(headers);
    expect(read.to.map(([, address]) => address)).toEqual(["lucia.ferrer@example.org"]);
    expect(read.from.map(([, address]) => address)).toEqual(["desk@juniper-row.example.org"]);
    expect(read.defects).toEqual([]);
    expect(read.parts.length).toBe(8);
    expect(read.html).not.toMatch(/<b>/);
  }
  for (const bytes of messages) {
    const read = await simpleParser(Buffer.from(bytes));
    expect([...read.headers.keys()].sort()).toEqual([...headers].sort());
    expect(mailboxes(read.to).map(([, address]) => address)).toEqual(["lucia.ferrer@example.org"]);
  }
});

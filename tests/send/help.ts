import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { mkdirSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { format } from "date-fns";
import { SMTPServer, type SMTPServerOptions, type SMTPServerSession } from "smtp-server";
import type { Desk } from "../../src/cli/desk.js";
import type { SendOptions } from "../../src/cli/options.js";
import { sendLetters } from "../../src/cli/send-letters.js";
import type { Terminal } from "../../src/cli/terminal.js";
import { openHouse } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";
import { main } from "../cli/hearthsheet.js";
import { messageOf } from "../email/help.js";

/** What the server does with one attempt. before: it answers nothing at all, or something else than yes. */
export type Mood = "take" | "greylist" | "busy" | "after" | "drop" | "stall" | "never" | "vanish";

export type Server = {
  url: string;
  /** Every letter the server has taken, by recipient. */
  taken: Map<string, string[]>;
  attempts: () => number;
  close: () => Promise<void>;
};

const answer = (responseCode: number) => Object.assign(new Error("not now"), { responseCode });

/** A real SMTP server on this machine, in the mood that is asked for each attempt. */
export async function smtpServer(
  mood: (attempt: number, recipient: string) => Mood,
  options: SMTPServerOptions = {},
  host = "127.0.0.1",
): Promise<Server> {
  const taken: Server["taken"] = new Map();
  let attempts = 0;
  const moods = new Map<string, Mood>();
  const recipientOf = ({ envelope }: SMTPServerSession) => envelope.rcptTo[0]?.address ?? "";
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    logger: false,
    ...options,
    onRcptTo({ address }, session, callback) {
      const now = mood(attempts++, address);
      moods.set(session.id, now);
      if (now === "stall") return;
      if (now === "greylist") return callback(answer(451));
      if (now === "busy") return callback(answer(421));
      if (now === "never") return callback(answer(550));
      callback();
    },
    onData(stream, session, callback) {
      const now = moods.get(session.id);
      const chunks: Buffer[] = [];
      const hangUp = () =>
        [...(server.connections as Set<{ id: string; _socket: { destroy(): void } }>)]
          .find(({ id }) => id === session.id)
          ?._socket.destroy();
      stream.on("data", (chunk: Buffer) => {
        if (now === "drop") hangUp();
        chunks.push(chunk);
      });
      stream.on("end", () => {
        if (now === "drop") return;
        if (now === "after") return callback(answer(452));
        const to = recipientOf(session);
        taken.set(to, [...(taken.get(to) ?? []), Buffer.concat(chunks).toString("latin1")]);
        if (now === "vanish") hangUp();
        else callback();
      });
    },
  });
  server.on("error", () => {});
  server.listen(0, host);
  await once(server.server, "listening");
  const { port } = server.server.address() as AddressInfo;
  return {
    url: `smtp://127.0.0.1:${port}`,
    taken,
    attempts: () => attempts,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}

const issued = format(new Date(), "yyyy-MM-dd'T'HH:mm");
/** Built packages, one an owner, as a build writes them today. */
export async function packages(folder: string, count: number, address = (i: number) => `owner-${i}@example.org`) {
  const names = Array.from({ length: count }, (_, i) => `case-${i}`);
  for (const [i, name] of names.entries()) {
    mkdirSync(join(folder, name));
    const to = { name: `Owner ${i}`, address: address(i) };
    const letter = await messageOf({ to, id: `${i}`.padStart(64, "0") }, { issued });
    writeFileSync(join(folder, name, "handout.eml"), letter);
    const sha256 = createHash("sha256").update(letter).digest("hex");
    const record = {
      format: "hearthsheet-record/1",
      caseId: String(i),
      revision: 0,
      languages: [{ language: "es", review: "not reviewed" }],
      files: [{ name: "handout.eml", sha256 }],
    };
    writeFileSync(join(folder, name, "record.json"), JSON.stringify(record));
  }
  return names;
}

export type Sent = { code: number; out: string; err: string };

const house = openHouse(await shippedFiles()).value;
const usual: SendOptions = { yes: true, tries: 5, wait: 0.05, timeout: 1, unsure: "leave", case: [] };

/** hearthsheet send, in this process, beside the server. Folders are told by their own name. */
export async function send(folder: string, names: readonly string[], options: Partial<SendOptions>): Promise<Sent> {
  if (!house) throw new Error("what ships is broken");
  const said = { out: "", err: "" };
  const terminal: Terminal = {
    out: (line) => {
      said.out += `${line}\n`;
    },
    err: (line) => {
      said.err += `${line}\n`;
    },
    progress: () => {},
    colour: false,
    style: (_, text) => text,
    width: 80,
    seen: false,
  };
  const desk: Desk = { house, terminal, json: options.json ?? false };
  const folders = names.map((name) => join(folder, name));
  const code = await sendLetters(desk, folders, { ...usual, ledger: join(folder, "state/sent.jsonl"), ...options });
  return { code, out: said.out.replaceAll(`${folder}/`, ""), err: said.err.replaceAll(`${folder}/`, "") };
}

/** hearthsheet send in a process of its own, killed after so many milliseconds. */
export async function sendAndKill(folder: string, names: readonly string[], url: string, after: number): Promise<void> {
  const args = ["--yes", "--smtp", url, "--ledger", join(folder, "state/sent.jsonl")];
  const child = spawn(process.execPath, [main, "send", ...names.map((name) => join(folder, name)), ...args], {
    stdio: "ignore",
  });
  const timer = setTimeout(() => child.kill("SIGKILL"), after);
  await once(child, "close");
  clearTimeout(timer);
}

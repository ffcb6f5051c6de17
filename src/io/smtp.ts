import { Readable } from "node:stream";
import SMTPConnection from "nodemailer/lib/smtp-connection";

export type SmtpServer = {
  host: string;
  port: number;
  secure: boolean;
  plain: boolean;
  auth: { user: string; pass: string } | null;
};
export type Message = { from: string; to: string; bytes: Uint8Array };
/** reply: the server's own code, or null where it gave none. */
export type SmtpResult = { taken: true } | { taken: false; reply: number | null; code: string };

/**
 * Gives one message to a mail server. timeout: the longest silence of the server that is borne, in milliseconds.
 * beforeEnd is waited for when the server has asked for the message and all but its end is on the way: until it is done the
 * server cannot have the message whole, and if it throws, the message is not ended and that error is thrown.
 */
export async function deliver(
  server: SmtpServer,
  message: Message,
  timeout: number,
  beforeEnd: () => Promise<void>,
): Promise<SmtpResult> {
  let failure: unknown;
  const connection = connectionTo(server, timeout);
  const { promise: broken, reject } = withReject();
  connection.on("error", reject);
  connection.once("end", () => reject(Object.assign(new Error("the connection ended"), { code: "ECONNECTION" })));
  const raw = Readable.from(
    (async function* () {
      yield Buffer.from(message.bytes);
      try {
        await beforeEnd();
      } catch (error) {
        // The library writes its own code into an error that passes through it: ours stays as it is.
        failure = error;
        throw new Error("the message was not ended");
      }
    })(),
  );
  const step = (begin: (done: (error?: Error | null) => void) => void) =>
    Promise.race([broken, new Promise<void>((resolve, no) => begin((error) => (error ? no(error) : resolve())))]);
  const { auth, plain } = server;
  try {
    await step((done) => connection.connect(done));
    if (auth) await step((done) => connection.login({ ...auth }, done));
    if (!plain && !connection.secure) return { taken: false, reply: null, code: "ETLS" };
    if (!isAscii(message.to) && !knowsUtf8(connection)) return { taken: false, reply: null, code: "ESMTPUTF8" };
    await step((done) => connection.send({ from: message.from, to: [message.to] }, raw, done));
    return { taken: true };
  } catch (error) {
    if (failure) throw failure;
    const { responseCode, code } = error as { responseCode?: number; code?: string };
    return { taken: false, reply: responseCode ?? null, code: code ?? "EUNKNOWN" };
  } finally {
    raw.destroy();
    connection.close();
  }
}

const connectionTo = ({ host, port, secure, plain }: SmtpServer, timeout: number) =>
  new SMTPConnection({
    host,
    port,
    secure,
    requireTLS: !plain && !secure,
    tls: { minVersion: "TLSv1.2", ...(plain ? { rejectUnauthorized: false } : {}) },
    connectionTimeout: timeout,
    greetingTimeout: timeout,
    socketTimeout: timeout,
  });

const isAscii = (text: string): boolean => /^[\x20-\x7e]*$/.test(text);

/** Whether the server takes addresses in UTF-8 (RFC 6531, 3.2: to another none may be sent). The library asks it, and keeps what
 * it answered to itself. */
const knowsUtf8 = (connection: SMTPConnection): boolean =>
  (connection as unknown as { _supportedExtensions?: string[] })._supportedExtensions?.includes("SMTPUTF8") ?? false;

/** A promise that only ever fails: what may go wrong at any moment. */
function withReject(): { promise: Promise<never>; reject: (error: Error) => void } {
  let reject: (error: Error) => void = () => {};
  const promise = new Promise<never>((_, no) => {
    reject = no;
  });
  promise.catch(() => {});
  return { promise, reject };
}

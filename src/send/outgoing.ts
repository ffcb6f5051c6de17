const encoder = new TextEncoder();
const end = encoder.encode("\r\n\r\n");

/** The message as it goes out: the mark of a draft is for mail programs that open it, and stays behind. */
export function outgoing(message: Uint8Array): Uint8Array {
  const bytes = Buffer.from(message);
  const body = bytes.indexOf(end);
  const head = bytes.subarray(0, body < 0 ? bytes.length : body).toString("latin1");
  const kept = head.replace(/^X-Unsent:.*\r\n/m, "");
  return Buffer.concat([Buffer.from(kept, "latin1"), bytes.subarray(head.length)]);
}

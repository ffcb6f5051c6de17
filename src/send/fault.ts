/** What went wrong on the way to the server: its own reply code, if it gave one, and a short code of the fault. */
export type Fault = { reply: number | null; code: string };

/**
 * later: try again. never: this letter will not be taken. all: no letter will, so none is tried. unsure: the server may have
 * taken it.
 */
export type Verdict = "later" | "never" | "all" | "unsure";

/** Faults of the connection: the server is away, or went away. */
const away = new Set(["ECONNECTION", "ETIMEDOUT", "ESOCKET", "EDNS", "ECONNREFUSED", "ECONNRESET", "EPIPE", "ESTREAM"]);

/**
 * What a fault means. A reply settles it: 4yz is a no for now, 5yz a no (RFC 5321, 4.2.1). Without one, a letter whose end
 * was on its way may have been taken (RFC 1047), and is never sent again unasked.
 */
export function verdictOn({ reply, code }: Fault, handed: boolean): Verdict {
  if (code === "ETLS" || (code === "EAUTH" && (reply === null || reply >= 500))) return "all";
  if (reply !== null && reply >= 400 && reply < 500) return "later";
  if (reply !== null && reply >= 500) return "never";
  if (handed) return "unsure";
  if (code === "EPROXY") return "all";
  return away.has(code) ? "later" : "never";
}

import { createHash } from "node:crypto";

/** The SHA-256 of bytes, in hexadecimal digits: how files are named, and known again. */
export const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

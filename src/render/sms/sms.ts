import { SegmentedMessage } from "sms-segments-calculator";
import type { Handout } from "#handout/handout.js";

/** One message as it goes out: its alphabet (GSM 03.38 or UCS-2) and how many parts it is sent in (3GPP TS 23.040). */
export type Message = { text: string; encoding: "GSM-7" | "UCS-2"; segments: number };

/** The short messages of a handout, each a line, ready to be sent; a line end or a control character has no place in one. */
export const messagesOf = ({ messages = [] }: Handout): Message[] =>
  messages.map((words) => {
    const text = words.replace(/[\s\p{Cc}]+/gu, " ").trim();
    const { encodingName, segmentsCount } = new SegmentedMessage(text);
    return { text, encoding: encodingName, segments: segmentsCount };
  });

/** As a text to copy from: before each message a line of its number, its alphabet and its parts, "1/3 GSM-7 x 2". */
export const renderSms = (handout: Handout): string =>
  messagesOf(handout)
    .map(({ encoding, segments, text }, i, { length }) => `${i + 1}/${length} ${encoding} x ${segments}\n${text}\n`)
    .join("\n");

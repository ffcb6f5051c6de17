import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { messagesOf, renderSms } from "#render/sms/sms.js";
import { everyNode, hostile } from "../handouts/every-node.js";

const sent = (...messages: string[]) => messagesOf({ ...everyNode, messages });
const only = (text: string) => {
  const [message] = sent(text);
  return message && [message.encoding, message.segments];
};

// 3GPP TS 23.038, 6.2.1: the default alphabet, and its extension table, whose characters take two septets.
const basic =
  "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";
const extension = "^{}\\[~]|€";

/** Parts a text is sent in, counted by hand: 160 septets or 70 UTF-16 units alone, 153 or 67 in each of several. */
function counted(text: string): [string, number] {
  const chars = [...text];
  const gsm = chars.every((char) => basic.includes(char) || extension.includes(char));
  const sizes = chars.map((char) => (gsm ? (extension.includes(char) ? 2 : 1) : char.length));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const [alone, part] = gsm ? [160, 153] : [70, 67];
  if (total <= alone) return [gsm ? "GSM-7" : "UCS-2", 1];
  let [parts, left] = [1, part];
  for (const size of sizes) {
    if (size > left) [parts, left] = [parts + 1, part];
    left -= size;
  }
  return [gsm ? "GSM-7" : "UCS-2", parts];
}

describe("alphabet and parts", () => {
  test.each([
    ["a".repeat(160), "GSM-7", 1],
    ["a".repeat(161), "GSM-7", 2],
    ["a".repeat(307), "GSM-7", 3],
    [`${"a".repeat(152)}€${"a".repeat(10)}`, "GSM-7", 2],
    [`${"a".repeat(152)}€${"a".repeat(152)}`, "GSM-7", 3],
    ["ñ".repeat(160), "GSM-7", 1],
    ["á".repeat(70), "UCS-2", 1],
    ["á".repeat(71), "UCS-2", 2],
  ])("%s", (text, encoding, segments) => {
    expect(counted(text)).toEqual([encoding, segments]);
    expect(only(text)).toEqual([encoding, segments]);
  });

  test("as the standard counts them, for any text", () => {
    const unit = fc.constantFrom(..."abc XYZ.,(312)ñ¿¡€[]", "á", "í");
    fc.assert(
      fc.property(fc.string({ unit, minLength: 1, maxLength: 400 }), (text) => {
        const [message] = sent(`x${text}x`);
        expect([message?.encoding, message?.segments]).toEqual(counted(message?.text ?? ""));
      }),
      { numRuns: 200 },
    );
  });
});

test("a message is one line, whatever is in it, and its space is a plain one", () => {
  expect(sent(`${hostile}\u00a0\u2028x`)[0]?.text).toBe(`${hostile.replace(/\s+/g, " ")} x`);
});

test("is a text to copy from", () => {
  expect(renderSms({ ...everyNode, messages: ["One.", "Dós."] })).toBe("1/2 GSM-7 x 1\nOne.\n\n2/2 UCS-2 x 1\nDós.\n");
  expect(renderSms(everyNode)).toBe("");
});

import { expect, test } from "vitest";
import { printable } from "../../src/cli/printable.js";

test("what a terminal would obey is shown, not obeyed", () => {
  expect(printable("Rex\u001b[2J\r\nBcc: \u202exeR")).toBe("Rex\ufffd[2J\ufffd\ufffdBcc: \ufffdxeR");
});

test("a date is found by who types it with an ordinary space", () => {
  expect(printable("March\u00a02, 2026")).toBe("March 2, 2026");
});

test("words kept to themselves stay so, and nothing else that turns the writing", () => {
  expect(printable("الأمر \u2068hearthsheet send\u2069")).toBe("الأمر \u2068hearthsheet send\u2069");
  expect(printable("الأمر \u2066hearthsheet send\u2069")).toBe("الأمر \u2066hearthsheet send\u2069");
  expect(printable("\u2066hearthsheet \u2066(1\u202e)\u2069\u2069")).toBe(
    "\u2066hearthsheet \u2066(1\ufffd)\u2069\u2069",
  );
  expect(printable("\u2068a\u202eb\u2069 \u2068c")).toBe("\u2068a\ufffdb\u2069 \ufffdc");
  expect(printable("\u2067a\u2069")).toBe("\ufffda\ufffd");
});

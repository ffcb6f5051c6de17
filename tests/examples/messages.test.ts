import { expect, test } from "vitest";
import { inlinesIn, wordsOf } from "#handout/walk.js";
import { render } from "#index.js";
import { everyExample, factsOf, handoutOf, house, whole } from "./examples.js";

/** Without the marks that keep a name in words of another direction to itself. */
const bare = (text: string) => text.replace(/[\u2066-\u2069]/g, "");

test.each(everyExample)(
  "%s in %s: whom to ring, when to go, what comes next, as short messages",
  async (name, language) => {
    const facts = factsOf(name);
    const handout = handoutOf(facts, language);
    const [file] = whole(await render(handout, house, { paper: "letter", large: false, formats: ["sms"] }));
    const messages = bare(new TextDecoder().decode(file?.bytes))
      .split("\n")
      .filter((line) => line.startsWith(facts.patient.name));
    expect(messages).toHaveLength(3);
    const [ring = "", go = "", next = ""] = messages;
    for (const { phone, name } of facts.contacts) {
      expect(ring.replace(/\D/g, "")).toContain(phone.slice(2));
      expect(ring).toContain(name);
    }
    const [first] = facts.signs.filter(({ urgency }) => urgency === "now");
    const printed = [...inlinesIn(handout)].find((node) => node.kind === "statement" && node.id === first?.id);
    expect(go).toContain(printed?.kind === "statement" ? bare(wordsOf(printed.inlines)) : "a sign on the page");
    const [due] = facts.medicines.filter(({ id }) => id === facts.next.dose?.medicine);
    expect(next.toLowerCase()).toContain(due?.name.toLowerCase() ?? "a medicine that is due");
    // The parts a telephone puts together; more than six are a letter, not a message.
    const parts = [...new TextDecoder().decode(file?.bytes).matchAll(/^\d\/3 (?:GSM-7|UCS-2) x (\d+)$/gm)].map(
      ([, n]) => Number(n),
    );
    expect(parts).toHaveLength(3);
    expect(Math.max(...parts)).toBeLessThanOrEqual(6);
  },
);

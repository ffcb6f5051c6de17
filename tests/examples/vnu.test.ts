import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { compose, render } from "#index.js";
import { cases, factsOf, house, whole } from "./examples.js";

const jar = "node_modules/vnu-jar/build/dist/vnu.jar";
const documents = ["handout", "first-page", "estimate"] as const;

test("the W3C's checker has nothing to say of any page of the examples, in any language", async () => {
  const folder = mkdtempSync(join(tmpdir(), "hearthsheet-vnu-"));
  try {
    const languages = house.locales.tags.filter((tag) => tag !== "en-GB");
    for (const name of cases)
      for (const language of languages)
        for (const document of documents) {
          const handout = whole(compose(factsOf(name), house, { language, document }));
          const options = { paper: "letter", large: false, document, formats: ["html"] } as const;
          const [page] = whole(await render(handout, house, options));
          writeFileSync(join(folder, `${name}-${language}-${document}.html`), page?.bytes ?? "");
        }
    const args = ["-Xss4m", "-jar", jar, "--format", "json", "--exit-zero-always", "--skip-non-html", folder];
    const { stderr, error } = spawnSync("java", args, { encoding: "utf8", maxBuffer: 1 << 28 });
    if (error) throw error;
    const { messages } = JSON.parse(stderr) as { messages: { url: string; lastLine: number; message: string }[] };
    expect([...new Set(messages.map(({ url, message }) => `${url.split("/").at(-1)}: ${message}`))]).toEqual([]);

    // It reads the pages: one that is wrong is told.
    writeFileSync(join(folder, "wrong.html"), "<!doctype html><html lang=en><title>x</title><p><div></p>");
    const wrong = spawnSync("java", ["-jar", jar, "--format", "json", join(folder, "wrong.html")], {
      encoding: "utf8",
    });
    expect(JSON.parse(wrong.stderr).messages.length).toBeGreaterThan(0);
  } finally {
    rmSync(folder, { recursive: true });
  }
}, 300_000);

// The text and the page of one build, set by other engines, as JSON: node peers.mjs FOLDER (of handout.txt, handout.html)
// cold: the first document, with loading the engine; warm: the median of those that follow, every paragraph changed.
// An engine that is not there is told as missing: npm ci in this folder fetches Typst and pdfmake.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";

const [folder] = process.argv.slice(2);
const paragraphs = readFileSync(join(folder, "handout.txt"), "utf8").split(/\n\s*\n/);
const changed = (n) => paragraphs.map((text) => `${text} ${n}`);
const fonts = createRequire(import.meta.url).resolve(
  "@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf",
);
const missing = "not installed: run npm ci in scripts/bench/peers";

const engines = {
  async typst() {
    const { NodeCompiler } = await import("@myriaddreamin/typst-ts-node-compiler");
    const compiler = NodeCompiler.create({ fontArgs: [{ fontPaths: [join(fonts, "../..")] }] });
    const plain = (text) => text.replace(/[\\#$*_`<>@[\]=~/+-]/g, "\\$&");
    const head = `#set page("us-letter")\n#set text(font: "Atkinson Hyperlegible Next", size: 12pt)\n`;
    return (n) => compiler.pdf({ mainFileContent: head + changed(n).map(plain).join("\n\n") }).length;
  },
  async pdfmake() {
    const { default: Printer } = await import("pdfmake/src/printer.js");
    const printer = new Printer({ Page: { normal: fonts } });
    return (n) =>
      new Promise((resolve, reject) => {
        const made = printer.createPdfKitDocument({
          pageSize: "LETTER",
          defaultStyle: { font: "Page", fontSize: 12 },
          content: changed(n),
        });
        let length = 0;
        made.on("data", (bytes) => {
          length += bytes.length;
        });
        made.on("end", () => resolve(length)).on("error", reject);
        made.end();
      });
  },
  async chromium() {
    const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
      existsSync,
    );
    if (!executablePath) throw Object.assign(new Error(), { code: "ERR_MODULE_NOT_FOUND" });
    const { chromium } = await import("playwright-core");
    const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
    const page = await browser.newPage();
    const print = async () => {
      await page.goto(pathToFileURL(join(folder, "handout.html")).href);
      return (await page.pdf({ format: "Letter" })).length;
    };
    return Object.assign(print, { close: () => browser.close() });
  },
};

const runs = 15;
const report = {};
for (const [name, open] of Object.entries(engines)) {
  try {
    const start = performance.now();
    const engine = await open();
    const bytes = await engine(0);
    const cold = performance.now() - start;
    const times = [];
    for (let n = 1; n <= runs; n++) {
      const before = performance.now();
      await engine(n);
      times.push(performance.now() - before);
    }
    await engine.close?.();
    report[name] = {
      cold: Math.round(cold),
      warm: Math.round(times.sort((a, b) => a - b)[(runs - 1) / 2] * 10) / 10,
      bytes,
    };
  } catch (error) {
    if (error.code !== "ERR_MODULE_NOT_FOUND") throw error;
    report[name] = missing;
  }
}
process.stdout.write(JSON.stringify(report));

/**
 * Makes fonts/ from the full families: node scripts/subset-fonts.mjs FOLDER, where FOLDER holds their packages:
 *   npm install --prefix FOLDER @expo-google-fonts/noto-sans-sc@0.4.3 @expo-google-fonts/noto-sans@0.4.2 \
 *     @expo-google-fonts/vazirmatn@0.4.1 subset-font@2
 * The full families are over 100 MB, so they are no dependency; what is made of them is kept in fonts/, with their licence
 * (SIL Open Font License 1.1). A character left out is reported where a page needs it.
 */
import { copyFile, mkdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";

const [folder] = process.argv.slice(2);
if (!folder) throw new Error("usage: node scripts/subset-fonts.mjs FOLDER");
const packages = join(resolve(folder), "node_modules");
const subset = createRequire(join(packages, "x.js"))("subset-font");

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join("");
const ascii = range(0x20, 0x7e);

/** All of GB 2312, as the host's decoder knows it: 6,763 common characters and the signs that go with them. */
const gb2312 = (() => {
  const decoder = new TextDecoder("gb2312");
  const rows = Array.from({ length: 0xf7 - 0xa1 + 1 }, (_, row) =>
    Array.from({ length: 0xfe - 0xa1 + 1 }, (_, cell) => decoder.decode(new Uint8Array([0xa1 + row, 0xa1 + cell]))),
  );
  return rows
    .flat()
    .filter((character) => !/[\ufffd\p{Co}]/u.test(character))
    .join("");
})();

/** Latin with Vietnamese, Greek, Cyrillic, and the signs of text. */
const western = [
  ascii,
  range(0xa0, 0x24f),
  range(0x300, 0x36f),
  range(0x370, 0x52f),
  range(0x1e00, 0x1eff),
  range(0x2010, 0x2044),
  range(0x20a0, 0x20c0),
  range(0x2100, 0x2122),
  range(0x2150, 0x2193),
  range(0x2212, 0x2265),
].join("");

/** What the Arabic language is written with: letters and marks of vowels, digits of both kinds, the signs of text. */
const arabic = `${range(0x621, 0x63a)}${range(0x640, 0x652)}\u0670${range(0x660, 0x66c)}\u060c\u061b\u061f`;

/** For a screen, whose first family has the Western European letters: the other Latin ones, and the other scripts apart from them. */
const screens = {
  latin: { latin: `${range(0x100, 0x17f)}ƠơƯư${range(0x1e80, 0x1ef9)}`, greek: range(0x370, 0x52f) },
  // A word is joined within one font: a page with a letter of Persian, Urdu or another language carries them all.
  arabic: { arabic, "arabic-all": range(0x600, 0x6ff) + range(0x750, 0x77f) },
};

const families = [
  {
    name: "han",
    from: "noto-sans-sc/{}/NotoSansSC_{}.ttf",
    text: gb2312 + ascii + range(0xa0, 0xff) + range(0x2010, 0x2044),
  },
  { name: "latin", from: "noto-sans/{}/NotoSans_{}.ttf", text: western },
  { name: "arabic", from: "vazirmatn/{}/Vazirmatn_{}.ttf", text: null },
];
const weights = { regular: "400Regular", bold: "700Bold" };

await mkdir("fonts", { recursive: true });
for (const { name, from, text } of families) {
  await copyFile(join(packages, "@expo-google-fonts", from.split("/")[0], "LICENSE_FONT"), `fonts/${name}-LICENSE`);
  for (const [weight, file] of Object.entries(weights)) {
    const whole = await readFile(join(packages, "@expo-google-fonts", from.replaceAll("{}", file)));
    const kept = text === null ? whole : await subset(whole, text, { targetFormat: "truetype" });
    await writeFile(`fonts/pdf-${name}-${weight}.ttf`, kept);
    for (const [web, letters] of Object.entries(screens[name] ?? {}))
      await writeFile(`fonts/web-${web}-${weight}.woff2`, await subset(whole, letters, { targetFormat: "woff2" }));
    console.log(name, weight, whole.length, "->", kept.length);
  }
}

import { expect, it } from "vitest";
import { deskLanguage } from "../../src/cli/say.js";
import { openHouse, speaks } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";

const { value: house } = openHouse(await shippedFiles());
if (!house) throw new Error("what ships is broken");

it.each([
  [{ LANG: "pt_BR.UTF-8" }, "pt-BR", "pt-BR"],
  [{ LANG: "pt_PT" }, "pt-PT", "pt-BR"],
  [{ LANG: "es_MX.UTF-8" }, "es-MX", "es"],
  [{ LANG: "zh_CN.GB18030" }, "zh-CN", "zh-Hans"],
  // Taiwan writes Hant: simplified signs are no help there.
  [{ LANG: "zh_TW.UTF-8" }, "zh-TW", null],
  [{ LANG: "en_GB.UTF-8" }, "en-GB", "en-GB"],
  [{ LANG: "en_US.UTF-8" }, "en-US", "en"],
  [{ LANG: "de" }, "de", "de"],
  [{ LANG: "de_DE@euro" }, "de-DE", "de"],
  [{ LANG: "C.UTF-8" }, "en", "en"],
  [{ LANG: "POSIX" }, "en", "en"],
  [{ LANG: "" }, "en", "en"],
  [{}, "en", "en"],
  [{ LANG: "$(id)_XX" }, "en", "en"],
  [{ LANG: "de_DE.UTF-8", LC_MESSAGES: "fr_FR.UTF-8" }, "fr-FR", "fr"],
  [{ LANG: "de_DE.UTF-8", LC_MESSAGES: "fr_FR.UTF-8", LC_ALL: "vi_VN.UTF-8" }, "vi-VN", "vi"],
])("%j: who sits there reads %s, and is spoken to in %s", (env, asked, spoken) => {
  expect([deskLanguage(env), speaks(house, deskLanguage(env))]).toEqual([asked, spoken]);
});

import { dirname } from "node:path";
import { explain, languages } from "#index.js";
import { version } from "#io/shipped.js";
import { problem } from "#problems/problem.js";
import { readServer } from "#send/server.js";
import { clinicHouse } from "./clinic-house.js";
import { type Desk, openDesk } from "./desk.js";
import { openPlanRoom } from "./entry/plan-room.js";
import type { ExitCode } from "./exit-code.js";
import { printable } from "./printable.js";
import { deskLanguage } from "./say.js";

type Options = { clinic?: string; json?: boolean };
const at = { file: "", line: 1, column: 1, length: 1 };

/** What is set up here. Of the mail server only whether there is one. */
async function lookAround(desk: Desk, { clinic }: Options) {
  const { room, refusal } = await openPlanRoom(desk, ".", clinic === undefined ? {} : { clinic });
  const profile = room?.profile;
  const clinicPath = room?.clinicPath ?? refusal?.broken?.name ?? null;
  const smtp = process.env["HEARTHSHEET_SMTP"];
  return {
    version: await version(),
    node: process.version,
    clinic: clinicPath,
    usable: room !== null,
    prices: profile?.prices.length ?? 0,
    collars: profile?.collars.length ?? 0,
    holidays: profile?.holidays ? [profile.holidays.country, profile.holidays.region].filter(Boolean).join("-") : null,
    languages: languages(desk.house).map(({ tag, name, state, sentences, complete }) => ({
      ...{ tag, name, state, sentences, complete },
    })),
    fonts: desk.house.fonts.pdf.length,
    ...(await ownIn(desk, clinicPath)),
    smtp: smtp ? (readServer(smtp).value ? "set" : "unreadable") : "missing",
  };
}

/** What the clinic has of its own. overrides: null where that cannot be used. */
async function ownIn({ house }: Desk, clinicPath: string | null) {
  if (clinicPath === null) return { overrides: [] };
  const own = await clinicHouse(house, dirname(clinicPath));
  return { overrides: own.house?.overrides.map(({ file: _file, ...one }) => one) ?? null };
}

export async function tellAbout(options: Options): Promise<ExitCode> {
  const desk = await openDesk(options);
  const found = await lookAround(desk, options);
  if (desk.json) desk.terminal.out(JSON.stringify(found));
  else for (const line of linesOf(desk, found)) desk.terminal.out(line);
  return 0;
}

function linesOf({ house }: Desk, found: Awaited<ReturnType<typeof lookAround>>): string[] {
  const said = (context: string, given = "", count = 0) =>
    explain(problem("about", at, { context, given, count }), house, deskLanguage()).what;
  const tell = (...about: Parameters<typeof said>) => printable(said(...about));
  const { clinic, usable, prices, collars, holidays, overrides, fonts } = found;
  const ours = usable
    ? [
        tell("clinic", clinic ?? ""),
        tell(prices > 0 ? "prices" : "no-prices", "", prices),
        tell(collars > 0 ? "collars" : "no-collars", "", collars),
        tell(holidays ? "holidays" : "no-holidays", holidays ?? ""),
      ]
    : [clinic === null ? tell("no-clinic") : tell("clinic-broken", clinic)];
  const mail = { set: "smtp", unreadable: "smtp-broken", missing: "no-smtp" }[found.smtp] ?? "no-smtp";
  return [
    tell("tool", `${found.version}, Node ${found.node}`),
    ...ours,
    ...(overrides === null ? [tell("overrides-broken")] : []),
    ...(overrides && overrides.length > 0
      ? [tell("overrides", overrides.map(({ name }) => name).join(", "), overrides.length)]
      : []),
    ...found.languages.map(({ tag, name, state, sentences, complete }) =>
      columns(
        said("language", [tag, name, state, ...(state === "original" ? [] : [`${complete}/${sentences}`])].join("\t")),
      ),
    ),
    tell("fonts", "", fonts),
    tell(mail),
  ];
}

/** What keeps words from turning what is around them is for sentences: here each cell stands alone. */
const columns = (line: string): string =>
  line
    .replace(/[\u2066-\u2069]/g, "")
    .split("\t")
    .map(printable)
    .join("\t");

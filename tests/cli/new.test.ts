import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { Answers } from "../../src/cli/entry/answers.js";
import { clinicQuestions } from "../../src/cli/entry/clinic-questions.js";
import { hold, isProblem } from "../../src/cli/entry/interview.js";
import { planDraft } from "../../src/cli/entry/plan-draft.js";
import { planQuestions } from "../../src/cli/entry/plan-questions.js";
import { openPlanRoom, type PlanRoom } from "../../src/cli/entry/plan-room.js";
import { brought, tryPlan } from "../../src/cli/entry/trial.js";
import { openHouse } from "../../src/index.js";
import { shippedFiles } from "../../src/io/shipped.js";
import { drive, enter, type Step, typed } from "./drive.js";
import { copyOfExamples, hearthsheet, type Run, stackTrace } from "./hearthsheet.js";

let folder = "";
beforeEach(() => {
  folder = copyOfExamples();
});
afterEach(() => rmSync(folder, { recursive: true }));

const read = (path: string) => readFileSync(join(folder, path), "utf8");
const run = (...args: string[]): Run =>
  hearthsheet(args, { cwd: folder, env: { XDG_STATE_HOME: join(folder, "state") } });

const rex = ["--name", "Rex", "--species", "dog", "--sex", "male", "--weight", "31 kg", "--owner", "Ama Okafor"];
const wound = ["--topic", "sutured-wound", "--site", "left thigh", "--language", "en"];
const day = ["--today", "2026-03-02", "--discharged", "2026-03-02 16:30"];
const carprofen = "carprofen, tablet 100 mg, splits halves, dose 4.4 mg/kg, every 24 h, for 4 days, last given 09:00";

describe("from flags", () => {
  it("writes a plan that builds, with remarks and a modeline, for its owner alone", () => {
    const { code, out } = run("new", "rex/plan.yaml", ...rex, ...wound, ...day, "--medicine", carprofen);
    expect({ code, out }).toEqual({ code: 0, out: "rex/plan.yaml\n" });
    const [first, second] = read("rex/plan.yaml").split("\n");
    expect(first).toBe("# yaml-language-server: $schema=../plan.schema.json");
    expect(second).toMatch(/^# .+/);
    expect(JSON.parse(read("plan.schema.json"))).toHaveProperty("properties.patient");
    expect(statSync(join(folder, "rex/plan.yaml")).mode & 0o777).toBe(0o600);
    expect(run("build", "rex/plan.yaml", "--out", "out", "--today", "2026-03-02").code).toBe(0);
    expect(readdirSync(join(folder, "out"))).toContain("handout.pdf");
  });

  it("takes what is usual for the rest: the course of the topic, and until when the collar stays on", () => {
    run("new", "rex.yaml", ...rex, ...wound, ...day, "--collar", "44 cm, 21 cm");
    const plan = parse(read("rex.yaml"), { schema: "failsafe" });
    expect(plan.care[0].course).toEqual(["sutures out day 10-14"]);
    expect(plan.collar).toEqual({ neck: "44 cm", length: "21 cm", until: "sutures out" });
    expect(plan.reason).toBe("Wound closed with stitches.");
  });

  it("takes the collar off at a recheck where nothing else of the course ends it", () => {
    const untilOf = (topic: string[], ...course: string[]) => {
      const flags = ["--topic", ...topic, "--language", "en", ...course.flatMap((line) => ["--course", line])];
      rmSync(join(folder, "rex.yaml"), { force: true });
      run("new", "rex.yaml", ...rex, ...day, ...flags, "--collar", "44 cm, 21 cm");
      return parse(read("rex.yaml")).collar.until;
    };
    const wounds = ["bite-wound", "--site", "left thigh"];
    expect(untilOf(wounds, "recheck day 3-5")).toBe("recheck");
    const bandaged = ["open-wound-clinic-bandage", "--site", "left cheek", "--bandage", "tie-over"];
    expect(untilOf(bandaged, "change every day for 3 days, first tomorrow", "recheck day 14")).toBe("bandage off");
  });

  it("leaves a medicine without a dose to the clinician, and makes none up", () => {
    const { err } = run(
      "new",
      "rex.yaml",
      ...rex,
      ...wound,
      ...day,
      "--medicine",
      carprofen,
      "--medicine",
      "amoxicillin",
    );
    expect(err).toContain("amoxicillin is left for you");
    const text = read("rex.yaml");
    expect(text).toMatch(/^# {3}- name: amoxicillin$/m);
    expect(text).toMatch(/^# {5}dose:$/m);
    expect(parse(text, { schema: "failsafe" }).medicines).toHaveLength(1);
    // Without its marks it stands in the list of medicines, and what is still open is told.
    const filled = text.replace(/^# ( {2}- name: amoxicillin\n(?:# {5}.*\n)+)/m, (_, block) =>
      block.replace(/^# /gm, ""),
    );
    writeFileSync(join(folder, "filled.yaml"), filled);
    expect(run("check", "filled.yaml", "--today", "2026-03-02").err).toContain("field-missing");
  });

  it("writes what asks for a reason as lines to be answered, and gives none itself", () => {
    const { code, err } = run(
      "new",
      "rex.yaml",
      ...rex,
      ...wound,
      ...day,
      "--medicine",
      carprofen.replace("4.4", "8.8"),
    );
    expect(code).toBe(0);
    expect(err).toContain("dose-over-limit");
    expect(parse(read("rex.yaml")).allow).toBeUndefined();
    expect(run("build", "rex.yaml", "--out", "out", "--today", "2026-03-02").code).toBe(1);
    const why = ["--allow", "dose-over-limit:carprofen, 8.8 mg/kg=Asked for."];
    expect(
      run("new", "why.yaml", ...rex, ...wound, ...day, "--medicine", carprofen.replace("4.4", "8.8"), ...why).err,
    ).toContain("allowed[dose-over-limit]");
    const answered = read("rex.yaml").replace(/^# allow:[\s\S]*$/m, (block) =>
      block.replace(/^# /gm, "").replace(/reason:$/gm, "reason: A test."),
    );
    writeFileSync(join(folder, "rex.yaml"), answered);
    expect(run("check", "rex.yaml", "--today", "2026-03-02")).toMatchObject({ code: 0 });
  });

  it("says which flags are missing where there is no terminal", () => {
    const { code, err } = run("new", "--name", "Rex");
    expect(code).toBe(2);
    for (const flag of ["--species", "--sex", "--weight", "--owner", "--topic"]) expect(err).toContain(flag);
    expect(err).not.toContain("--name");
    expect(err).not.toMatch(stackTrace);
  });

  it.each([
    ["a medicine that is not understood", ["--medicine", "carprofen, tablet 100 mg, evry 24 h"], "evry 24 h", 2],
    ["a collar that is not understood", ["--collar", "44 cm, chin 20 cm"], "chin 20 cm", 2],
    ["a collar whose end nothing tells", ["--topic", "bite-wound", "--collar", "44 cm, 20 cm"], "bandage off", 2],
    ["a plan that is stopped is not written", ["--medicine", "carprofen, tablet 100 mg, give 1 mL"], "No plan was", 1],
    ["a dose without days", ["--medicine", "carprofen, tablet 100 mg, dose 4.4 mg/kg, every 24 h"], "days-missing", 1],
    ["an item that is not on the list", ["--item", "examinaton"], "item-unknown", 1],
    ["a course that cannot be read", ["--course", "chnge every day for 3 days"], "visit-kind-unknown", 1],
  ])("writes nothing for %s", (_, flags, told, exit) => {
    const { code, err } = run("new", "rex.yaml", ...rex, ...wound, ...day, ...flags);
    expect(err).toContain(told);
    expect(code).toBe(exit);
    expect(readdirSync(folder)).not.toContain("rex.yaml");
  });

  it("never writes over a file", () => {
    writeFileSync(join(folder, "rex.yaml"), "before");
    writeFileSync(join(folder, "plan.schema.json"), "before");
    expect(run("new", "rex.yaml", ...rex, ...wound, ...day)).toMatchObject({ code: 2, out: "" });
    expect(run("new", ...rex, ...wound, ...day)).toMatchObject({ code: 0, out: "rex-2.yaml\n" });
    expect([read("rex.yaml"), read("plan.schema.json")]).toEqual(["before", "before"]);
    expect(run("new", "clinic", "clinic.yaml")).toMatchObject({ code: 2 });
  });

  it("offers the choices of an earlier plan again, and keeps nothing of the case", () => {
    const course = ["--course", "recheck day 3-5", "--course", "sutures out on 2026-03-13"];
    run("new", "a.yaml", ...rex, ...wound, ...day, ...course, "--clinician", "Dr. Noor Haddad", "--item", "recheck");
    const kept = read("state/hearthsheet/choices.json");
    for (const secret of ["Rex", "Ama", "31", "thigh", "2026-03-13"]) expect(kept).not.toContain(secret);
    const { err } = run("new", "b.yaml", ...rex, ...wound, ...day);
    expect(err).toContain("Dr. Noor Haddad signs. --clinician names another.");
    expect(err).toContain("Next: hearthsheet build b.yaml --out out");
    const plan = parse(read("b.yaml"), { schema: "failsafe" });
    expect([plan.clinician, plan.care[0].course, plan.estimate.items]).toEqual([
      "Dr. Noor Haddad",
      ["recheck day 3-5"],
      ["recheck"],
    ]);
  });

  it("lets nobody sign who is not of the clinic, though they signed last", () => {
    run("new", "a.yaml", ...rex, ...wound, ...day, "--clinician", "Dr. Ida Quill");
    writeFileSync(
      join(folder, "clinic.yaml"),
      `${read("clinic.yaml")}\nclinicians: [{ name: Dr. Noor Haddad, days: [monday] }, { name: Dr. Sam Reed, days: [tuesday] }]\n`,
    );
    expect(run("new", "b.yaml", ...rex, ...wound, ...day).code).toBe(0);
    expect(read("b.yaml")).not.toContain("Ida Quill");
  });

  it("needs a clinic profile, and makes one that plans are built with", () => {
    const bare = mkdtempSync(join(tmpdir(), "hearthsheet-"));
    const at = (...args: string[]) => hearthsheet(args, { cwd: bare, env: { XDG_STATE_HOME: bare } });
    expect(at("new", "rex.yaml", ...rex, ...wound, ...day)).toMatchObject({ code: 2 });
    const profile = ["--name", "Juniper: Row", "--address", "18 Juniper Row", "--phone", "+1 312 555 0142"];
    const harbor = ["--after-address", "400 Harbor Street"];
    const night = ["--after-name", "Lakeside Emergency", ...harbor, "--after-phone", "+1 312 555 0187"];
    const rest = ["--zone", "America/Chicago", "--currency", "USD", "--weekdays", "08:00-18:00"];
    const { code, out } = at("new", "clinic", ...profile, ...night, ...rest);
    expect({ code, out }).toEqual({ code: 0, out: "clinic.yaml\n" });
    expect(readFileSync(join(bare, "clinic.yaml"), "utf8")).toContain("country: US");
    expect(at("new", "rex.yaml", ...rex, ...wound, ...day)).toMatchObject({ code: 0 });
    expect(at("build", "rex.yaml", "--out", "out", "--today", "2026-03-02")).toMatchObject({ code: 0 });
    expect(readFileSync(join(bare, "out/handout.txt"), "utf8")).toContain("400 Harbor Street");
    const wrong = at("new", "clinic", "two.yaml", ...profile, ...night, ...rest, "--sunday", "noon");
    expect(wrong).toMatchObject({ code: 1, out: "" });
    expect(wrong.err).toContain("hours-unreadable");
    const hours = ["--zone", "America/Chicago", "--currency", "USD", "--weekdays", "2-6"];
    const five = at("new", "clinic", "two.yaml", ...profile, ...night, ...hours).err;
    expect(five.match(/hours-unreadable/g)).toHaveLength(1);
    expect(five).toContain("08:00-18:00");
    const local = ["--name", "Juniper Row", "--address", "18 Juniper Row", "--phone", "312 555 0142"];
    const noCode = at("new", "clinic", "two.yaml", ...local, ...night, ...rest);
    expect(noCode).toMatchObject({ code: 2, out: "" });
    expect(noCode.err).toContain("312 555 0142 is not a phone number with its country code");
    expect(noCode.err).not.toContain("--country");
    const inCountry = at("new", "clinic", "two.yaml", ...local, ...night, ...rest, "--country", "US");
    expect(inCountry).toMatchObject({ code: 0 });
    expect(readFileSync(join(bare, "two.yaml"), "utf8")).toContain("phone: +1 312 555 0142");
    rmSync(bare, { recursive: true });
  });
});

describe("every plan it can write", () => {
  let room: PlanRoom;
  beforeAll(async () => {
    const { value: house } = openHouse(await shippedFiles());
    if (!house) throw new Error("the house is broken");
    const opened = await openPlanRoom({ house } as never, "examples", {
      clinic: "examples/clinic.yaml",
      today: "2026-03-02",
    });
    if (!opened.room) throw new Error("the clinic of the examples is broken");
    room = opened.room;
  });
  const stops = (answers: Answers) => {
    const draft = { clinic: "clinic.yaml", schema: "plan.schema.json", collars: room.collars, asks: [] };
    const { value, problems } = tryPlan(
      planDraft(answers, draft, (name) => `Of ${name}: {x} # "y".`),
      "plan.yaml",
      room.ground,
    );
    return { plan: value?.plan, stops: problems.filter(({ severity }) => severity === "stop") };
  };

  it("is handed out on the day it is at the clinic, wherever the machine stands", async () => {
    const far = readFileSync("examples/clinic.yaml", "utf8").replace("America/Chicago", "Pacific/Auckland");
    writeFileSync(join(folder, "far.yaml"), far);
    const now = new Date("2026-11-30T21:48:00Z");
    const on = async (clinic: string, today?: string) => {
      const options = { clinic, now, ...(today === undefined ? {} : { today }) };
      return (await openPlanRoom({ house: room.ground.house } as never, folder, options)).room?.usual.discharged;
    };
    expect(await on(join(folder, "far.yaml"))).toBe("2026-12-01 10:48");
    expect(await on("examples/clinic.yaml")).toBe("2026-11-30 15:48");
    expect(await on(join(folder, "far.yaml"), "2026-03-02")).toBe("2026-03-02 10:48");
  });

  it("has the clinic's country say its paper and its public holidays, where they are known", () => {
    const made = (file: string, ...where: string[]) => {
      const flags = [
        "--name",
        "Kauri Road",
        "--address",
        "4 Kauri Road",
        "--after-name",
        "Night",
        "--weekdays",
        "8-18",
      ];
      const phones = ["--phone", where[0] ?? "", "--after-phone", where[0] ?? ""];
      expect(run("new", "clinic", file, ...flags, ...phones, "--language", "en", ...where.slice(1)).code).toBe(0);
      return parse(read(file));
    };
    expect(made("us.yaml", "+1 312 555 0142", "--country", "US", "--zone", "America/Chicago")).toMatchObject({
      paper: "letter",
      holidays: { country: "US" },
    });
    expect(made("nz.yaml", "+64 6 555 0142", "--zone", "Pacific/Auckland")).toMatchObject({
      paper: "a4",
      holidays: { country: "NZ" },
    });
    expect(made("qa.yaml", "+974 4455 5014").holidays).toBeUndefined();
  });

  it("parts the street from the town", () => {
    const machine = { country: null, zone: "UTC", language: "en", speaks: () => "en", now: new Date(0) };
    const asked = clinicQuestions([], machine).find(({ context }) => context === "clinic-address") ?? expect.fail();
    const lines = (typed: string) => asked.read([typed], { answers: {}, facts: null });
    expect(lines("4 Kauri Road, Kowhai Flat, 4999")).toEqual({ address: ["4 Kauri Road", "Kowhai Flat, 4999"] });
    expect(lines("4 Kauri Road; Flat, 4999")).toEqual({ address: ["4 Kauri Road", "Flat, 4999"] });
    expect(lines("Kauri House")).toEqual({ address: ["Kauri House"] });
  });

  it("takes the night clinic's address apart from its name, and leaves a name with commas whole", () => {
    const machine = { country: null, zone: "UTC", language: "en", speaks: () => "en", now: new Date(0) };
    const { read: night } =
      clinicQuestions([], machine).find(({ context }) => context === "after-name") ?? expect.fail();
    const moment = { answers: {}, facts: null };
    const plains = { afterName: "Plains After Hours", afterAddress: ["4 Mill Street", "Kowhai Flat"] };
    expect(night(["Plains After Hours, 4 Mill Street, Kowhai Flat"], moment)).toEqual(plains);
    expect(night(["Plains After Hours; 4 Mill Street; Kowhai Flat"], moment)).toEqual(plains);
    expect(night(["Reed, Quill and Partners"], moment)).toEqual({ afterName: "Reed, Quill and Partners" });
  });

  it("reads a weight with a comma in it, and no part of it as the name", () => {
    const { read: weigh } = planQuestions(room.known).find(({ context }) => context === "patient") ?? expect.fail();
    const moment = { answers: {}, facts: null };
    expect(weigh(["Luna, 4,3 kg"], moment)).toEqual({ name: "Luna", weight: "4,3 kg" });
    expect(weigh(["Bear, the second, 31.5 kg"], moment)).toEqual({ name: "Bear, the second", weight: "31.5 kg" });
    expect(weigh(["Juno, mixed breed"], moment)).toMatchObject({ code: "new-name-and-weight" });
    expect(weigh(["Juno 4,3kg"], moment)).toEqual({ name: "Juno", weight: "4,3kg" });
    expect(weigh(["Juno the 2nd 9 lbs"], moment)).toEqual({ name: "Juno the 2nd", weight: "9 lb" });
    expect(weigh(["Juno 9"], moment)).toMatchObject({ code: "new-name-and-weight" });
  });

  it("passes without a stop, whatever is chosen", async () => {
    const kinds = { dog: ["3.1 kg", "24.6 kg", "54 lb"], cat: ["4.2 kg", "9 lb"] };
    const patient = fc.constantFrom("dog" as const, "cat" as const).chain((species) =>
      fc.record({
        species: fc.constant<string>(species),
        sex: fc.constantFrom("spayed female", "female", "neutered male", "male"),
        weight: fc.constantFrom(...kinds[species]),
      }),
    );
    const words = fc.string({ minLength: 1, maxLength: 60, unit: "grapheme" }).filter((text) => text.trim().length > 0);
    const rest = fc.record({
      name: words,
      owner: words,
      reason: words,
      site: fc.constantFrom("left cheek", "back", "right front paw", "tail", "neck"),
      course: fc.constantFrom(undefined, ["recheck day 3-5"], ["change every 2 days until day 8"]),
      medicines: fc.constantFrom(
        [],
        ["amoxicillin"],
        ["carprofen, tablet 20 mg, splits halves, give 0.5 tablet, every 24 h, for 3 days, not given"],
      ),
      collar: fc.constantFrom(undefined, "28 cm, 9 cm, until 2026-03-20", "soft cone, 22 cm, 10 cm, until 2026-03-20"),
    });
    const picks = fc.record({ topic: fc.nat(), language: fc.nat(), bandage: fc.nat(), items: fc.array(fc.nat()) });
    await fc.assert(
      fc.asyncProperty(patient, rest, picks, async (animal, typed, pick) => {
        const known = Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== undefined));
        const { site, ...given } = { ...animal, ...known } as Answers;
        const held = await hold(
          { questions: planQuestions(room.known), tryOut: room.tryOut },
          { ...room.usual, ...given },
          async (question, moment) => {
            if (question.context === "site") return [site ?? ""];
            const options = question.options?.(moment).map(({ value }) => value);
            if (!options) return question.initial?.(moment) ?? [];
            const chosen = pick[question.context as keyof typeof pick];
            if (Array.isArray(chosen)) return [...new Set(chosen.map((n) => options[n % options.length] ?? ""))];
            return [options[(chosen ?? 0) % options.length] ?? ""];
          },
          () => undefined,
        );
        if (!held) throw new Error("nobody broke it off");
        expect(held.missing).toEqual([]);
        const made = stops(held.answers);
        expect(made.stops).toEqual([]);
        const { patient, owner } = made.plan ?? {};
        expect([patient?.name.trim(), owner?.name]).toEqual([typed.name.trim(), typed.owner.trim()]);
      }),
      { numRuns: 30 },
    );
  });

  it("is asked for in twelve questions, and no choice it offers is doubted by the tool itself", async () => {
    const questions = planQuestions(room.known);
    expect(questions.length).toBeLessThanOrEqual(12);
    const topic = questions.find(({ context }) => context === "topic");
    const doubts: string[] = [];
    for (const species of ["dog", "cat"])
      for (const sex of ["female", "neutered male"]) {
        const answers = { ...room.usual, species, sex, weight: species === "dog" ? "20 kg" : "4 kg" };
        const before = room.tryOut(answers);
        const moment = { answers, facts: before.value };
        for (const { value } of topic?.options?.(moment) ?? []) {
          const chosen = topic?.read([value], moment);
          if (!chosen || isProblem(chosen)) throw new Error(value);
          const after = room.tryOut({ ...answers, ...chosen });
          const found = brought(before.problems, after.problems).filter(({ severity }) => severity !== "note");
          doubts.push(...found.map(({ code }) => `${species} ${sex} ${value}: ${code}`));
        }
      }
    expect(doubts).toEqual([]);
  });
});

describe("on a terminal", () => {
  const on = (columns: number, steps: Step[], args: string[], env: Record<string, string> = {}) =>
    drive(steps, args, { cwd: folder, columns, env });
  const course = "change every day for 3-5 days, first tomorrow; maybe closure day 7-14";
  const dog: Step[] = [
    ["Dog or cat?", [enter]],
    ["Name and weight", typed("Bramble, 24.6 kg")],
    ["Owner's name", typed("Lucía Ferrer")],
    ["owner reads", [enter]],
    ["cared for", [..."open wound"]],
    ["open wound", [enter]],
    ["Where on", typed("left cheek")],
    ["Which bandage", [enter]],
    ["found and done", [enter]],
    ["Visits, with", typed(course)],
    ["Medicines, with", typed(carprofen)],
    ["Collar: neck", typed("41 cm, 20 cm")],
    ["on the estimate", [enter]],
  ];

  it("finds a kind of care by other words of the trade", () => {
    const rest = ["found and done", "Visits, with", "Medicines, with", "Collar: neck", "on the estimate"];
    const steps: Step[] = [["cared for", typed("cut")], ...rest.map((asked): Step => [asked, [enter]])];
    const known = [...rex, "--language", "en", "--site", "left thigh"];
    const { code, stderr } = on(100, steps, ["new", "rex.yaml", ...known, ...day]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(parse(read("rex.yaml"), { schema: "failsafe" }).care[0].topic).toBe("sutured-wound");
  });

  it.each([[40], [100]])(
    "asks, shows what follows, and writes a plan that builds: %i columns, no colour",
    (columns) => {
      const { code, colours, shown, stderr } = on(columns, dog, ["new", "dog.yaml", ...day], { NO_COLOR: "1" });
      expect({ code, colours, stderr }).toEqual({ code: 0, colours: [], stderr: "" });
      const plain = shown.replace(/[\s│]+/g, " ");
      for (const effect of [
        "Signs to go for at once: ",
        "March 3, 2026: bandage change",
        "carprofen: 1 tablet each time, every 24 h. Doses at home: 4.",
        "Size L, 25 cm deep.",
        "likely $",
      ])
        expect(plain).toContain(effect);
      expect(run("build", "dog.yaml", "--out", "out", "--today", "2026-03-02").code).toBe(0);
      expect(parse(read("dog.yaml"), { schema: "failsafe" }).care).toEqual([
        { topic: "open-wound-clinic-bandage", site: "left cheek", bandage: "tie-over", course: course.split("; ") },
      ]);
    },
  );

  it("asks for a clinic profile in twelve questions, and takes zone and money from a country that has one", () => {
    const steps: Step[] = [
      ["Name of the clinic", typed("Juniper Row")],
      ["Address", typed("18 Juniper Row; Riverbend")],
      ["Country", [..."united states"]],
      ["United States", [enter]],
      ["Phone, as", typed("312 555")],
      ["is not a phone number", ["\u0015", ...typed("312 555 0142")]],
      ["E-mail", [enter]],
      ["Who is open", typed("Lakeside Emergency; 400 Harbor Street")],
      ["Their phone", typed("+1 312 555 0187")],
      ["Time zone", [..."nowhere", enter]],
      ["This is needed", [..."\u007f".repeat(7), ..."new york"]],
      ["America/New York", [..."\u007f".repeat(8), ..."Chicago"]],
      ["America/Chicago", [enter]],
      ["staff write", [enter]],
      ["Monday to Friday", typed("2-6")],
      ["does not say", ["\u0015", ...typed("8am-6pm")]],
      ["Saturday", [enter]],
      ["Sunday", [enter]],
    ];
    const { code, stderr, shown } = on(40, steps, ["new", "clinic", "ours.yaml"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    for (const told of ["Esc goes back", "$48.00", "(312) 555-0142", "in a week: 50", "Next: hearthsheet new"])
      expect(shown.replace(/[\s│]+/g, " ")).toContain(told);
    expect(parse(read("ours.yaml"), { schema: "failsafe" })).toMatchObject({
      country: "US",
      phone: "+1 312 555 0142",
      currency: "USD",
      "time zone": "America/Chicago",
      address: ["18 Juniper Row", "Riverbend"],
      "after hours": { name: "Lakeside Emergency", address: ["400 Harbor Street"] },
      hours: { monday: "08:00-18:00", sunday: "closed" },
    });
    const britain: Step[] = [
      ["Country", [..."united kingdom"]],
      ["United Kingdom", [enter]],
      ["staff write", [enter]],
    ];
    const flags = ["--name", "Chestnut", "--address", "4 Hill Road", "--after-name", "Night", "--weekdays", "8-18"];
    // Kept for examples by Ofcom.
    const phones = ["--phone", "020 7946 0018", "--after-phone", "020 7946 0019", "--email", "a@example.org"];
    const rest = ["--saturday", "closed", "--sunday", "closed"];
    expect(on(80, britain, ["new", "clinic", "chestnut.yaml", ...flags, ...phones, ...rest]).stderr).toBe("");
    expect(parse(read("chestnut.yaml"), { schema: "failsafe" })).toMatchObject({
      ...{ country: "GB", "time zone": "Europe/London", currency: "GBP", phone: "+44 20 7946 0018" },
    });
  });

  it("goes back with Esc, and finds there what was typed, until an answer before it changes", () => {
    const esc = "\u001b";
    const steps: Step[] = [
      ["Dog or cat?", [enter]],
      ["Name and weight", typed("Brambel, 24.6 kg")],
      ["Owner's name", typed("Lucía Ferrer")],
      ["owner reads", [esc]],
      ["Owner's name", [esc]],
      ["Name and weight", ["\u001b[D".repeat(9), "\u007f", "\u007f", ...typed("le")]],
      ["Owner's name", ["\u0015", ...typed("Ana Ferrer")]],
      ["owner reads", [enter]],
      ["cared for", [..."stitches", enter]],
      ["Where on", typed("left thigh")],
      ["found and done", [enter]],
      ["Visits, with", typed("-")],
      ["Medicines, with", [enter]],
      ["Collar: neck", [enter]],
      ["on the estimate", [enter]],
    ];
    const { code, stderr } = on(80, steps, ["new", "dog.yaml", ...day]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    const plan = parse(read("dog.yaml"), { schema: "failsafe" });
    expect([plan.patient.name, plan.owner.name]).toEqual(["Bramble", "Ana Ferrer"]);
    expect(plan.care[0].course).toBeUndefined();
  });

  it("asks why where the plan asks for a reason, so that it builds", () => {
    const high = carprofen.replace("4.4", "6");
    const steps: Step[] = [
      ["Medicines, with", typed(high)],
      ["Enter again keeps it", [enter]],
      ["Collar: neck", [enter]],
      ["on the estimate", [enter]],
      ["into the record", typed("x".repeat(201))],
      ["200", ["\u0015", ...typed("Asked for by the specialist.")]],
    ];
    const { code, stderr } = on(80, steps, [
      "new",
      "dog.yaml",
      ...rex,
      ...wound,
      ...day,
      "--reason",
      "A cut.",
      "--course",
      "-",
    ]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(parse(read("dog.yaml"), { schema: "failsafe" }).allow).toMatchObject([
      { problem: "dose-over-limit", reason: "Asked for by the specialist." },
    ]);
    expect(run("build", "dog.yaml", "--out", "out", "--today", "2026-03-02").code).toBe(0);
  });

  it("goes back from why with Esc, to the reason before or to the last question, and keeps what was answered", () => {
    const esc = "\u001b";
    const other = "amoxicillin-clavulanate, tablet 375 mg, dose 30 mg/kg, every 12 h, for 7 days, last given 09:00";
    const both = `${carprofen.replace("4.4", "6")}; ${other}`;
    const steps: Step[] = [
      ["Medicines, with", typed(both)],
      ["Enter again keeps it", [enter]],
      ["Collar: neck", [enter]],
      ["on the estimate", [enter]],
      ["into the record", [esc]],
      ["on the estimate", [enter]],
      ["into the record", typed("By the specialist.")],
      ["into the record", [esc]],
      ["into the record", typed(" Twice.")],
      ["into the record", typed("Whole tablets.")],
      ["into the record", typed("A deep bite.")],
    ];
    const flags = ["new", "dog.yaml", ...rex, ...wound, ...day, "--reason", "A cut.", "--course", "-"];
    expect(on(80, steps, flags)).toMatchObject({ code: 0, stderr: "" });
    const plan = parse(read("dog.yaml"), { schema: "failsafe" });
    expect(plan.allow.map(({ reason }: { reason: string }) => reason)).toEqual([
      "By the specialist. Twice.",
      "Whole tablets.",
      "A deep bite.",
    ]);
    expect(plan.medicines).toHaveLength(2);
  });

  it("takes with Enter what shows the words that were typed, not what only goes by them as well", () => {
    const steps: Step[] = [
      ["What is cared for", typed("bite")],
      ["Medicines, with", [enter]],
      ["Collar: neck", [enter]],
      ["on the estimate", [enter]],
    ];
    const known = ["--site", "left thigh", "--language", "en", "--reason", "A bite.", "--course", "recheck day 3"];
    expect(on(80, steps, ["new", "dog.yaml", ...rex, ...known, ...day])).toMatchObject({ code: 0, stderr: "" });
    expect(parse(read("dog.yaml")).care[0].topic).toBe("bite-wound");
  });

  it("doubts a weight at the end alone, where no collar has borne it out", () => {
    const ask = (collar: string[]): Step[] => [
      [
        "Medicines, with",
        typed("meloxicam 1.5 mg/mL oral susp, 0.1 mg/kg SID x 3d, last given 9 am, until 2026-03-05"),
      ],
      ["Collar: neck", collar],
      ["on the estimate", [enter]],
    ];
    const flags = ["new", "dog.yaml", ...rex, ...wound, ...day, "--reason", "A cut.", "--course", "-"];
    const why: Step = ["into the record", typed("Weighed twice.")];
    expect(on(80, [...ask([enter]), why], flags)).toMatchObject({ code: 0, stderr: "" });
    expect(parse(read("dog.yaml")).allow).toEqual([
      { problem: "weight-not-borne-out", for: expect.any(String), reason: "Weighed twice." },
    ]);
    const other = flags.with(1, "other.yaml");
    expect(on(80, ask(typed("neck 44 cm, nose 21 cm, until 2026-03-16")), other)).toMatchObject({
      code: 0,
      stderr: "",
    });
    expect(parse(read("other.yaml")).allow).toBeUndefined();
  });

  it("lets no answer pass that would stop the plan, and asks twice for one that needs a reason", () => {
    const steps: Step[] = [
      ["Dog or cat?", [enter]],
      ["Name and weight", typed("Bramble")],
      ["is not a name", ["\u0015", ...typed("Bramble, 24.6")]],
      ["has no unit", ["\u0015", ...typed("Bramble, 246 kg")]],
      ["is unusual for", ["\u0015", ...typed("Bramble, 24.6 kg")]],
      ["Owner's name", [enter]],
      ["This is needed", ["\u0003"]],
    ];
    const { code, shown } = on(60, steps, ["new", "dog.yaml", ...day]);
    expect(code).toBe(2);
    expect(shown).toContain("Nothing was written");
    expect(readdirSync(folder)).not.toContain("dog.yaml");
  });
});

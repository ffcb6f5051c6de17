/** The whole line from code: a plan and its clinic profile in, the files of a package out. */
import {
  compose,
  compute,
  type Outcome,
  type OutputFile,
  openHouse,
  type Problem,
  readPlan,
  render,
  type Sources,
} from "hearthsheet";
import { shippedFiles } from "hearthsheet/shipped";

export async function handOver(sources: Sources, language: string, today: string): Promise<OutputFile[]> {
  const house = whole(openHouse(await shippedFiles()));
  const plan = whole(readPlan(sources, { today }));
  const facts = whole(compute(plan, house));
  const handout = whole(compose(facts, house, { language }));
  return whole(
    await render(handout, house, { paper: "letter", large: false, formats: ["pdf", "html", "text", "ics"] }),
  );
}

/** A result, or an error that names what stopped it. */
function whole<T>({ value, problems }: Outcome<T>): T {
  if (value === null) throw new Error(problems.map(({ code }: Problem) => code).join(", "));
  return value;
}

import { type House, openHouse } from "#index.js";
import { shippedFiles } from "#io/shipped.js";
import { placeText } from "#problems/place.js";
import { BrokenHouse } from "./broken-house.js";
import { type Terminal, terminal } from "./terminal.js";

/** What every command works with. */
export type Desk = { house: House; terminal: Terminal; json: boolean };

/** Opens what ships with the tool. It cannot be broken by a user, only by whoever changed it: that is told as an error. */
export async function openDesk({ json = false }: { json?: boolean }): Promise<Desk> {
  const { value: house, problems } = openHouse(await shippedFiles());
  if (!house) throw new BrokenHouse(problems.map(({ code, at }) => `${placeText(at)} ${code}`).join(", "));
  return { house, terminal: terminal(), json };
}

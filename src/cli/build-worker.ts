import { type Built, builder, type Task } from "./build-task.js";
import { openDesk } from "./desk.js";
import { terminal } from "./terminal.js";

/** How the main thread's terminal is, which a worker cannot see. */
export type Look = { width: number; seen: boolean; colour: boolean };
type Order = { task: Task; look: Look };

/** What ships is opened once a thread. */
const desk = openDesk({});

/** Builds one plan in a thread of its own. */
export default async function build({ task, look }: Order): Promise<Built> {
  const { house } = await desk;
  return builder({ house, json: task.options.json ?? false, terminal: terminal(look) })(task);
}

import { type Built, builder, type Task } from "./build-task.js";
import { openDesk } from "./desk.js";
import { type Look, terminal } from "./terminal.js";

/** look: of the main thread's terminal. */
type Order = { task: Task; look: Look };

/** What ships is opened once a thread. */
const desk = openDesk({});

/** Builds one plan in a thread of its own. */
export default async function build({ task, look }: Order): Promise<Built> {
  const { house } = await desk;
  return builder({ house, json: task.options.json ?? false, terminal: terminal(look) })(task);
}

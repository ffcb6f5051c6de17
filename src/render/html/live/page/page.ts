import type { Live } from "#handout/live.js";
import { clockIn } from "../clock.js";
import { nowAt } from "../view.js";
import { make, panel } from "./panel.js";
import { type Ticks, ticksOf } from "./ticks.js";

/** How often the page looks at the clock. */
const everyMs = 20_000;

function start(live: Live & { zone: string }, main: HTMLElement): void {
  const ticks = ticksOf(live.key);
  const top = make("section", "urgent now");
  top.setAttribute("aria-labelledby", "now-title");
  let shown = "";

  const box = (id: string, text: string): Node => {
    const input = make("input", "");
    input.type = "checkbox";
    input.dataset["tick"] = id;
    input.checked = ticks.has(id);
    return make("label", "tickable", input, make("span", "", text));
  };
  const show = (): void => {
    const clock = clockIn(live.zone, new Date());
    // A dose that is ticked while the page is open stays in sight, so that a slip of the finger can be mended.
    const now = nowAt(live, clock, ticks.wasSet);
    const next = JSON.stringify(now);
    if (next === shown) return;
    shown = next;
    const focus = top.contains(document.activeElement)
      ? (document.activeElement as HTMLElement).dataset["tick"]
      : undefined;
    top.replaceChildren(...panel(live.words, now, box));
    // What came next when the page was made gives way to what comes next now.
    top.classList.toggle("knows", now.knows);
    restore(main, ticks, clock.slice(0, 10));
    boxesIn(top)
      .find((input) => input.dataset["tick"] === focus)
      ?.focus();
  };

  main.prepend(top);
  show();
  main.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    const id = target.dataset["tick"];
    if (id === undefined) return;
    ticks.set(id, target.checked);
    for (const other of boxesIn(main)) if (other.dataset["tick"] === id) other.checked = target.checked;
  });
  setInterval(show, everyMs);
  document.addEventListener("visibilitychange", show);
  addPrintButton(live.words.print);
}

const boxesIn = (parent: HTMLElement): HTMLInputElement[] => [...parent.querySelectorAll<HTMLInputElement>("input")];

/** Boxes of the page itself as they were left; those of daily care begin anew each day. */
function restore(main: HTMLElement, ticks: Ticks, day: string): void {
  for (const input of boxesIn(main)) {
    const daily = input.dataset["daily"];
    if (daily !== undefined) input.dataset["tick"] = `${day} ${daily}`;
    const id = input.dataset["tick"];
    if (id !== undefined) input.checked = ticks.has(id);
  }
}

function addPrintButton(words: string): void {
  const button = make("button", "", words);
  button.type = "button";
  button.addEventListener("click", () => print());
  document.getElementById("tools")?.append(button);
}

const data = document.getElementById("live");
const main = document.querySelector("main");
if (data && main) start(JSON.parse(data.textContent ?? "") as Live & { zone: string }, main);

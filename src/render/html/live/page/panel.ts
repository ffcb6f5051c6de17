import type { Live, Ring } from "#handout/live.js";
import type { Told } from "../due.js";
import type { Now } from "../view.js";

/** Makes an element. Words are set as text, so that nothing in them can become markup. */
export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  className: string,
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  if (className) element.className = className;
  element.append(...children);
  return element;
}

/** The top of the page at one moment. box: a box to tick, by its id, with its words. */
export function panel(words: Live["words"], now: Now, box: (id: string, text: string) => Node): Node[] {
  const heading = make("h2", "", words.title);
  heading.id = "now-title";
  const boxes = (list: { id: string; text: string }[]) =>
    list.length > 0 ? [make("ul", "tick", ...list.map(({ id, text }) => make("li", "", box(id, text))))] : [];
  return [
    heading,
    make("p", "lead", now.said),
    ...now.ring.flatMap(ring),
    ...(now.over ? [make("p", "body", now.over)] : []),
    ...(now.due.length > 0 ? [make("h3", "", words.due), ...boxes(now.due.map(inOneLine))] : []),
    ...(now.asked.length > 0 ? [make("h3", "", words.asked), ...boxes(now.asked.map(inOneLine)), missed(words)] : []),
    ...(now.next.length > 0 ? told(words.nextDose, now.next) : []),
    ...(now.visit ? told(words.nextVisit, [now.visit]) : []),
    ...(now.steps.list.length > 0 ? [make("h3", "", now.steps.title), ...boxes(now.steps.list)] : []),
    ...(now.due.length + now.asked.length + now.steps.list.length > 0 ? [make("p", "small", words.ticks)] : []),
  ];
}

const inOneLine = ({ id, when, text }: Told) => ({ id, text: `${when} · ${text}` });

const told = (title: string, list: Told[]): Node[] => [
  make("h3", "", title),
  make("p", "body", make("strong", "", list[0]?.when ?? "")),
  make("ul", "bullet", ...list.map(({ text }) => make("li", "", text))),
];

function missed(words: Live["words"]): Node {
  const link = make("a", "", words.missed);
  link.href = "#medicines";
  return make("p", "body", link);
}

function ring({ who, e164, text }: Ring): Node[] {
  const link = make("a", "phone", text);
  link.href = `tel:${encodeURIComponent(e164).replace("%2B", "+")}`;
  link.dir = "ltr";
  return [make("p", "body", who), make("p", "lead ring", link)];
}

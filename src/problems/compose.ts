import { ask, note, stop } from "./kind.js";

type Nothing = Record<never, never>;

/** Templates, the words of a language, and joining them to the facts. */
export const composeKinds = {
  "template-syntax": stop<{ detail: string }>(),
  "template-path-unknown": stop<{ path: string; near: readonly string[]; known: readonly string[] }>(),
  "template-helper-unknown": stop<{ name: string; near: readonly string[] }>(),
  "template-partial-unknown": stop<{ name: string; near: readonly string[] }>(),
  "template-choice-unknown": stop<{ given: string; choices: readonly string[] }>(),
  "template-not-a-list": stop<{ path: string }>(),
  "template-words-unknown": stop<{ key: string; language: string; near: readonly string[] }>(),
  "template-value-missing": stop<{ key: string; value: string; language: string }>(),
  "template-markup-unknown": stop<{ markup: string; known: readonly string[] }>(),
  "template-value-absent": stop<{ helper: string }>(),
  "template-construct": stop<{ construct: string }>(),
  "template-cycle": stop<{ name: string }>(),
  "template-endless": stop<Nothing>(),
  "template-failed": stop<{ detail: string }>(),
  "template-words-literal": note<{ words: string }>(),
  "override-unknown": stop<{ name: string; near: readonly string[] }>(),
  "override-empty": stop<{ key: string }>(),
  "override-figures": ask<{ language: string; key: string; wanted: readonly string[]; found: readonly string[] }>(
    "language",
    "key",
  ),
  "override-elsewhere": note<{ key: string; language: string }>(),
  /** context: "link", "large", "full" or "not-text"; limit: of the files in the folder. */
  "override-unusable": stop<{ path: string; context: string; limit: number }>(),
  "override-drops": stop<{ lost: string }>(),
  "locale-syntax": stop<{ detail: string }>(),
  "words-missing": stop<{ key: string; language: string }>(),
  "words-value-missing": stop<{ key: string; value: string; language: string }>(),
  "language-nearest": note<{ asked: string; used: string }>(),
  "proof-same-language": note<{ language: string }>(),
  "language-not-ready": note<{ asked: string; used: string }>(),
};

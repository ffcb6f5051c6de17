import type { Result } from "hastscript";

// The nodes of a page, as the library that builds them names them.
export type Element = Extract<Result, { type: "element" }>;
export type Root = Extract<Result, { type: "root" }>;
export type ElementContent = Element["children"][number];

import { type Document, isMap, parseDocument } from "yaml";

/** One change to a plan's text: a value put at a path, or, where there is none, what stands there taken away. */
export type Edit = { path: (string | number)[]; value?: unknown };

/**
 * The text of a plan with changes made to it, its comments and its order kept. Values are text as a clinician would write it,
 * in lists and maps; scalars are never guessed at.
 */
export function editPlan(text: string, edits: readonly Edit[]): string {
  const document = parseDocument(text, { schema: "failsafe", uniqueKeys: false });
  for (const edit of edits) apply(document, edit);
  return document.toString({ lineWidth: 0 });
}

function apply(document: Document, { path, value }: Edit): void {
  if (value === undefined) {
    if (document.hasIn(path)) document.deleteIn(path);
    return;
  }
  const node = document.createNode(value);
  // A short map stands on one line, as plans are written by hand.
  if (isMap(node) && path.length > 1) node.flow = true;
  document.setIn(path, node);
}

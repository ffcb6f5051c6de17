import Handlebars from "handlebars";
import { ownerKey } from "./helpers/helper.js";
import { helperNames } from "./helpers/helpers.js";

type Call = hbs.AST.MustacheStatement | hbs.AST.SubExpression;

const isPath = (node: hbs.AST.Node | undefined): node is hbs.AST.PathExpression => node?.type === "PathExpression";

/**
 * Makes a parsed template safe to run, in place: a path that stands alone becomes a call of `value`, so that nothing is
 * printed but holes, and each call of a helper is handed the object its first value stands in.
 */
export function rewrite(template: hbs.AST.Program): hbs.AST.Program {
  new Rewriter().accept(template);
  return template;
}

class Rewriter extends Handlebars.Visitor {
  override MustacheStatement(node: hbs.AST.MustacheStatement): void {
    super.MustacheStatement(node);
    if (isPath(node.path) && !helperNames.includes(node.path.original)) {
      node.params = [node.path];
      node.path = path(node.path, ["value"]);
    }
    handOwner(node);
  }
  override SubExpression(node: hbs.AST.SubExpression): void {
    super.SubExpression(node);
    handOwner(node);
  }
}

function handOwner(call: Call): void {
  const [first] = call.params;
  if (!isPath(first) || first.data) return;
  const pair = { type: "HashPair", key: ownerKey, value: ownerOf(first), loc: first.loc } as hbs.AST.HashPair;
  call.hash ??= { type: "Hash", pairs: [], loc: first.loc } as unknown as hbs.AST.Hash;
  call.hash.pairs.push(pair);
}

/** a.b.c stands in a.b; c in the context itself; an object is its own place, which the origins know. */
const ownerOf = (given: hbs.AST.PathExpression) => path(given, given.parts.slice(0, -1));

const path = (like: hbs.AST.PathExpression, parts: string[]): hbs.AST.PathExpression => ({
  ...like,
  parts,
  original: parts.join(".") || "this",
});

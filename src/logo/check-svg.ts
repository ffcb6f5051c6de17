import { SaxesParser } from "saxes";
import { type Problem, problem } from "#problems/problem.js";

/** Elements that act, that carry another language, or that show what a drawing does not hold itself. */
const acting = new Set(["script", "foreignobject", "iframe", "image", "feimage", "a", "animate", "set", "handler"]);
const worded = new Set(["text", "tspan", "textpath"]);
const outside = /url\(\s*["']?(?!\s*#)[^)]/i;

/** Every thing in an SVG that is more than shapes, at its line and column: "logo-not-plain", "logo-has-words", "logo-broken". */
export function checkSvg(text: string, file: string): Problem[] {
  const problems: Problem[] = [];
  const parser = new SaxesParser({ position: true });
  const here = () => ({ file, line: parser.line, column: Math.max(1, parser.column), length: 1 });
  const refuse = (what: string) => problems.push(problem("logo-not-plain", here(), { what }));
  let style = false;
  parser.on("doctype", () => refuse("<!DOCTYPE>"));
  parser.on("processinginstruction", ({ target }) => refuse(`<?${target}?>`));
  parser.on("opentag", ({ name, attributes }) => {
    const local = localName(name);
    style = local === "style";
    if (acting.has(local)) refuse(`<${name}>`);
    if (worded.has(local)) problems.push(problem("logo-has-words", here(), { what: `<${name}>` }));
    for (const [attribute, value] of Object.entries(attributes)) {
      const key = localName(attribute);
      if (key.startsWith("on")) refuse(attribute);
      else if ((key === "href" || key === "src") && !value.trim().startsWith("#")) refuse(attribute);
      else if (outside.test(value)) refuse(attribute);
    }
  });
  parser.on("text", (words) => {
    if (style && (/@import/i.test(words) || outside.test(words))) refuse("<style>");
  });
  parser.on("cdata", (words) => {
    if (style && (/@import/i.test(words) || outside.test(words))) refuse("<style>");
  });
  try {
    parser.write(text).close();
  } catch {
    problems.push(problem("logo-broken", here(), {}));
  }
  return problems;
}

const localName = (name: string): string => name.slice(name.indexOf(":") + 1).toLowerCase();

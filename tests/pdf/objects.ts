import { tool } from "./help.js";

/** The objects of a PDF as qpdf reads them: names are "/Name", strings "u:words", references "12 0 R". */
export type Value = string | number | boolean | null | Value[] | { [key: string]: Value };
export type Dict = { [key: string]: Value };

export class Objects {
  readonly #objects: Record<string, { value?: Value; stream?: { dict: Dict; data: string } }>;

  constructor(bytes: Uint8Array) {
    const args = ["--json=2", "--json-stream-data=inline", "--decode-level=generalized", "FILE"];
    const { qpdf } = JSON.parse(tool("qpdf", args, bytes).out);
    this.#objects = qpdf[1];
  }

  /** A value, followed if it is a reference. */
  at(value: Value | undefined): Value {
    if (typeof value !== "string" || !/^\d+ \d+ R$/.test(value)) return value ?? null;
    const object = this.#objects[`obj:${value}`];
    return this.at(object?.stream?.dict ?? object?.value);
  }

  dict(value: Value | undefined): Dict {
    const found = this.at(value);
    return found !== null && typeof found === "object" && !Array.isArray(found) ? found : {};
  }

  list(value: Value | undefined): Value[] {
    const found = this.at(value);
    return Array.isArray(found) ? found : found === null ? [] : [found];
  }

  /** The decoded bytes of a stream. */
  stream(reference: Value | undefined): Buffer {
    return Buffer.from(this.#objects[`obj:${String(reference)}`]?.stream?.data ?? "", "base64");
  }

  get trailer(): Dict {
    return this.dict(this.#objects["trailer"]?.value);
  }

  get catalog(): Dict {
    return this.dict(this.trailer["/Root"]);
  }

  get pages(): { reference: string; page: Dict }[] {
    return this.list(this.dict(this.catalog["/Pages"])["/Kids"]).map((kid) => ({
      reference: String(kid),
      page: this.dict(kid),
    }));
  }

  /** Every object that is a dictionary. */
  get all(): Dict[] {
    return Object.values(this.#objects).map(({ value, stream }) => this.dict(stream?.dict ?? value));
  }
}

/** An element of the structure tree with its children; content stands as a page and a number on it. */
export type Element = {
  type: string;
  dict: Dict;
  reference: string;
  children: Element[];
  content: { page: string; id: number }[];
  objects: Dict[];
};

export function structureOf(objects: Objects): Element {
  const root = objects.dict(objects.catalog["/StructTreeRoot"]);
  const [document] = objects.list(root["/K"]);
  return elementOf(objects, document);
}

function elementOf(objects: Objects, value: Value | undefined): Element {
  const dict = objects.dict(value);
  const element: Element = {
    type: String(dict["/S"]).slice(1),
    dict,
    reference: String(value),
    children: [],
    content: [],
    objects: [],
  };
  for (const kid of objects.list(dict["/K"])) {
    if (typeof kid === "number") element.content.push({ page: String(dict["/Pg"]), id: kid });
    else if (objects.dict(kid)["/Type"] === "/MCR")
      element.content.push({ page: String(objects.dict(kid)["/Pg"]), id: Number(objects.dict(kid)["/MCID"]) });
    else if (objects.dict(kid)["/Type"] === "/OBJR") element.objects.push(objects.dict(kid));
    else element.children.push(elementOf(objects, kid));
  }
  return element;
}

export const everyElement = (element: Element): Element[] => [element, ...element.children.flatMap(everyElement)];

const operator =
  /\/(?<tag>\w+)\s+(?:<<(?<says>[^>]*(?:>(?!>)[^>]*)*)>>\s+BDC|BMC)\b|(?<end>\bEMC\b)|(?<paint>(?<=[\s\])])(?:Tj|TJ|f\*?|F|S|s|B\*?|b\*?|Do|sh)(?=\s))/g;

/** The marked content of a page: how each painting operator is enclosed, outermost first. */
export function paintedIn(content: string): string[][] {
  const open: string[] = [];
  const painted: string[][] = [];
  for (const { groups = {} } of `${content}\n`.matchAll(operator)) {
    if (groups["tag"]) {
      const id = /\/MCID (\d+)/.exec(groups["says"] ?? "")?.[1];
      open.push(id === undefined ? groups["tag"] : `${groups["tag"]}:${id}`);
    } else if (groups["end"]) open.pop();
    else painted.push([...open]);
  }
  return painted;
}

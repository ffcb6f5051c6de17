import { type Place, placeText } from "#problems/place.js";

/** Where the value inside an object was written: the object's own place, or that of the nearest object around it. */
export type Origins = { place: (owner: unknown) => Place; text: (owner: unknown) => string };

type Node = Record<string, unknown>;
const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;
const isPlace = (value: unknown): value is Place => isNode(value) && "file" in value && "line" in value;

/** Facts are a tree: each object is met once on the way down, and inherits the place of what holds it. */
export function originsOf(root: object, rootPlace: Place): Origins {
  const places = new WeakMap<object, Place>();
  const visit = (node: Node, inherited: Place): void => {
    const place = isPlace(node["from"]) ? node["from"] : inherited;
    if (places.has(node)) return;
    places.set(node, place);
    for (const inner of Object.values(node)) if (isNode(inner) && !isPlace(inner)) visit(inner, place);
  };
  visit(root as Node, rootPlace);
  const place = (owner: unknown) => (isNode(owner) ? places.get(owner) : undefined) ?? rootPlace;
  return { place, text: (owner) => placeText(place(owner)) };
}

import type { Kit } from "./kit.js";
import type { Tag, TagSays } from "./tag.js";

type Element = PDFKit.PDFStructureElement & { dictionary: { data: Record<string, unknown> } };
type Box = { x: number; y: number; width: number; height: number };

export type Structure = {
  /** What is drawn next is the content of this element; box: what a picture fills on the page. */
  into: (tag: Tag, box?: Box) => void;
  /** What is drawn next says nothing. */
  artifact: (type: "Layout" | "Pagination") => void;
  /** A link's area on the page. */
  link: (tag: Tag, box: Box) => void;
  /** The element is there, with or without content. */
  touch: (tag: Tag) => void;
  /** Ends the open content: before a page turns. */
  close: () => void;
  end: () => void;
};

/** ISO 32000-1, 12.5.3: an annotation that is printed with its page, as PDF/A wants every one. */
const printed = 4;

/** The structure tree, grown in the order of drawing: an element is made when its first content is. */
export function structureOf(kit: Kit): Structure {
  const elements = new Map<Tag, Element>();
  const root: Element[] = [];
  let open: Tag | string | null = null;

  const elementOf = (tag: Tag, box?: Box): Element => {
    const known = elements.get(tag);
    if (known) return known;
    const made = kit.struct(tag.type, optionsOf(tag.says, box)) as Element;
    if (tag.says.numbering) made.dictionary.data["A"] = { O: "List", ListNumbering: tag.says.numbering };
    elements.set(tag, made);
    if (tag.parent) elementOf(tag.parent).add(made);
    else {
      kit.addStructure(made);
      root.push(made);
    }
    return made;
  };
  const close = (): void => {
    if (open === null) return;
    kit.endMarkedContent();
    open = null;
  };

  return {
    into: (tag, box) => {
      if (open === tag) return;
      close();
      const element = elementOf(tag, box);
      element.add(kit.markStructureContent(tag.type));
      open = tag;
    },
    artifact: (type) => {
      if (open === type) return;
      close();
      kit.markContent("Artifact", { type });
      open = type;
    },
    link: (tag, { x, y, width, height }) => {
      const { link } = tag.says;
      if (!link) return;
      const contents = new String(link.contents) as string;
      const element = elementOf(tag);
      kit.link(x, y, width, height, link.url, { structParent: element, Contents: contents, F: printed } as object);
      // pdfkit notes the page of a link when the element ends: it ends here, and words left over make another.
      element.end();
      elements.delete(tag);
    },
    touch: (tag) => {
      elementOf(tag);
    },
    close,
    end: () => {
      close();
      for (const element of root) element.end();
    },
  };
}

const optionsOf = (
  { alt, actual, expanded, language, scope }: TagSays,
  box?: Box,
): PDFKit.Mixins.StructureElementOptions => ({
  ...(alt === undefined ? {} : { alt }),
  ...(actual === undefined ? {} : { actual }),
  ...(expanded === undefined ? {} : { expanded }),
  ...(language === undefined ? {} : { lang: language }),
  ...(scope === undefined ? {} : { scope }),
  ...(box === undefined ? {} : { bbox: [box.x, box.y, box.x + box.width, box.y + box.height] }),
});

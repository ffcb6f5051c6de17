/** The structure elements of PDF 1.7 (ISO 32000-1, 14.8.4) that a handout needs. */
export type TagType =
  | "Document"
  | "Sect"
  | "H1"
  | "H2"
  | "H3"
  | "H4"
  | "H5"
  | "H6"
  | "P"
  | "L"
  | "LI"
  | "Lbl"
  | "LBody"
  | "Table"
  | "Caption"
  | "THead"
  | "TBody"
  | "TFoot"
  | "TR"
  | "TH"
  | "TD"
  | "Figure"
  | "Link"
  | "Span";

/** What a structure element says besides its content. link: where it leads and what a reader without sight hears. */
export type TagSays = {
  alt?: string;
  actual?: string;
  expanded?: string;
  language?: string;
  scope?: "Row" | "Column";
  numbering?: "Disc" | "Decimal" | "None";
  link?: { url: string; contents: string };
};

/** An element of the structure tree. It is known by identity: marks with the same tag are one element's content. */
export type Tag = { readonly type: TagType; readonly parent: Tag | null; readonly says: TagSays };

export const tag = (type: TagType, parent: Tag | null, says: TagSays = {}): Tag => ({ type, parent, says });

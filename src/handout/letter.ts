import type { Inline, Section } from "./handout.js";

export type Mailbox = { name: string; address: string };

/** The same words once in each language: the owner's first. lead: what the words of another language begin with. */
export type LetterPart = { language: string; direction: "ltr" | "rtl"; lead: Inline[]; sections: Section[] };

/** The e-mail that the handout goes with. Its subject can be read by anybody, and so tells no diagnosis. */
export type Letter = {
  /** null where the plan, or the clinic profile, has no address. */
  to: Mailbox | null;
  from: Mailbox | null;
  subject: string;
  /** The same for every letter of one case, person, language and revision, and for no other; 64 hexadecimal digits. */
  id: string;
  /** The ids of the letters it takes the place of, oldest first. */
  replaces: string[];
  parts: LetterPart[];
};

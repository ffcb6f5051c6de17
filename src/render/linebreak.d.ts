/** linebreak 1.1: the line breaking rules of Unicode (UAX #14). It ships without types. */
declare module "linebreak" {
  export default class LineBreaker {
    constructor(text: string);
    /** position: index in the text before which a line may begin. */
    nextBreak(): { position: number; required: boolean } | null;
  }
}

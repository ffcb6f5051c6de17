/** The name of a language in the words of another: languageName("es", "en") is "Spanish". */
export const languageName = (language: string, tag: string): string =>
  new Intl.DisplayNames([tag], { type: "language" }).of(language) ?? language;

/** Which way a language is written. Node 20 has textInfo as a property, later ones as a method; the library types know neither. */
export function directionOf(tag: string): "ltr" | "rtl" {
  type WithText = { textInfo?: { direction: "ltr" | "rtl" }; getTextInfo?: () => { direction: "ltr" | "rtl" } };
  const locale = new Intl.Locale(tag) as unknown as WithText;
  return (locale.getTextInfo?.() ?? locale.textInfo)?.direction ?? "ltr";
}

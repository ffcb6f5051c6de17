declare module "text-readability" {
  const readability: Record<
    "sentenceCount" | "lexiconCount" | "syllableCount" | "fleschKincaidGrade",
    (text: string) => number
  >;
  export default readability;
}

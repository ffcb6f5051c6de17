import { HtmlValidate } from "html-validate";

const validator = new HtmlValidate({
  root: true,
  extends: ["html-validate:standard", "html-validate:a11y"],
  rules: {
    // The words of a label or a title come from the clinic, and may be long.
    "long-title": "off",
    // The serializer writes `<!doctype html>`, which is as valid.
    "doctype-style": "off",
    // A number is printed as the clinic writes it; its spaces are kept together by the style sheet.
    "tel-non-breaking": "off",
  },
});

/** What html-validate has to say of a page: "12 rule: message". */
export const complaints = async (html: string): Promise<string[]> => {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
  );
};

import axe from "axe-core";
import type { Page } from "playwright-core";

// WCAG 2.2 AA is all that stands under these tags together; axe has no rules of its own under 2.2's level A.
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** What axe finds wrong with a page as it stands: rule, element, and what to do. */
export async function violations(page: Page): Promise<string[]> {
  if (await page.evaluate("!window.axe")) await page.evaluate(axe.source);
  const options = { runOnly: tags, resultTypes: ["violations"] };
  return page.evaluate(
    `axe.run(document, ${JSON.stringify(options)}).then(({ violations }) =>
      violations.flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => id + ": " + html + failureSummary)))`,
  );
}

/** How far a page is wider than its screen (WCAG 1.4.10: 320 px is also 1280 px at 400 % zoom). */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");

/** Paper, black on white. Nothing it says needs a background to be printed. */
export const printStyle = `
@page { margin: 18mm 20mm; @bottom-center { content: counter(page) " / " counter(pages); font: 9pt sans-serif; } }
@media print {
  :root {
    color-scheme: light;
    --paper: #fff; --ink: #000; --quiet: #333; --rule: #999; --pale: #e4e4e4; --accent: #555; --on-accent: #fff;
  }
  html { font-size: 12pt; line-height: 1.4; }
  body { max-inline-size: none; padding: 0; }
  nav, #tools, .now { display: none; }
  section.plain, footer { margin-block-start: 1.6rem; }
  h1, h2, h3 { break-after: avoid; }
  li, tr, .tickable, figure, .month, .signatures { break-inside: avoid; }
  p:has(+ :is(ul, ol, table, figure, .month, .signatures)) { break-after: avoid; }
  tfoot { display: table-row-group; }
  li { margin-block-end: .3em; }
  p { orphans: 3; widows: 3; }
  a { text-decoration: none; }
  .ring > .phone {
    background: none; color: var(--ink); padding: 0; border: 0; min-inline-size: 0; text-align: start;
  }
  .booked { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  input { inline-size: 14pt; block-size: 14pt; vertical-align: -.2em; border-width: 1pt; }
  svg { max-inline-size: 110mm; }
}
`;

/** Colours, type and the one column. Lengths follow the reader's own text size; nothing has a fixed height. */
export const pageStyle = `
:root {
  color-scheme: light dark;
  --paper: #fffefa;
  --ink: #1a1d1f;
  --quiet: #4b5255;
  --rule: #c8cdcc;
  --pale: #e6ecea;
  --accent: #0e4f58;
  --on-accent: #ffffff;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #14181a;
    --ink: #eceae4;
    --quiet: #b5bcbd;
    --rule: #454d50;
    --pale: #2a3335;
    --accent: #93d2cf;
    --on-accent: #0b1a1b;
  }
}
@media (forced-colors: active) {
  :root {
    --paper: Canvas; --ink: CanvasText; --quiet: CanvasText; --rule: CanvasText; --pale: Canvas;
    --accent: LinkText; --on-accent: Canvas;
  }
}
*, ::before, ::after { box-sizing: border-box; }
html {
  font: 112.5%/1.5 "Handout", "Handout Latin", "Handout Greek", "Handout Arabic", "Atkinson Hyperlegible", Verdana, sans-serif;
  background: var(--paper);
  color: var(--ink);
  -webkit-text-size-adjust: none;
  text-size-adjust: none;
  overflow-wrap: break-word;
  scroll-padding-block-start: 1rem;
}
body { max-inline-size: 36rem; margin: 0 auto; padding: 1.25rem 1.125rem 3rem; }
@media (min-width: 48rem) { body { padding-block-start: 3rem; } }

h1, h2, h3 { line-height: 1.2; text-wrap: balance; margin: 0 0 .6em; }
h1 { font-size: 1.7rem; margin-block-end: .3em; }
h2 { font-size: 1.4rem; }
h3 { font-size: 1.1rem; margin-block-start: 1.8em; }
p, ul, ol, figure, table, address { margin: 0 0 1em; }
.small, .note, figcaption, address, .letterhead { color: var(--quiet); font-size: .89rem; }
.lead { font-size: 1.2rem; }

.letterhead { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 1.5em; margin-block-end: 2em; }
header { margin-block-end: 2rem; }
.letterhead:has(+ .small) { margin-block-end: .2em; }
header > .small { margin: 0; }
header > .small + h1 { margin-block-start: 1.2rem; }
/* A logo is drawn on white; in the dark the white is a plate around it. */
.logo { display: block; background: #fff; margin-block-end: .6rem; }
@media (prefers-color-scheme: dark) { .logo { box-sizing: content-box; padding: .35rem; border-radius: .3rem; } }
section.plain { margin-block-start: 3rem; }
section section.plain { margin-block-start: 0; }
section.urgent { margin-block-start: 2rem; padding-block-start: .9rem; border-block-start: 4px solid var(--accent); font-size: 1.12rem; }
.urgent h2 { font-size: 1.55rem; }
footer { margin-block-start: 3rem; padding-block-start: 1rem; border-block-start: 1px solid var(--rule); }
address { font-style: normal; }
address span { display: block; }

a { color: var(--accent); text-decoration-thickness: .08em; text-underline-offset: .2em; }
a:focus-visible, input:focus-visible, button:focus-visible { outline: 3px solid var(--accent); outline-offset: 3px; }
nav { margin-block-start: 3rem; padding-block: .6rem; border-block: 1px solid var(--rule); }
nav ul { list-style: none; margin: 0; padding: 0; columns: 8rem 2; column-gap: 1.5rem; }
nav li { margin: 0; break-inside: avoid; }
nav a { display: block; padding-block: .45rem; }

/* A small screen at night: the number to ring stands on it without a touch. */
@media (max-width: 30rem) {
  body { padding-block-start: .75rem; }
  .letterhead:not(:has(+ .small)) { margin-block-end: .5em; }
  header { margin-block-end: 1rem; }
  h1 { font-size: 1.45rem; }
  header + section.urgent { margin-block-start: 1rem; }
}

.aside {
  position: absolute; inline-size: 1px; block-size: 1px; margin: -1px; overflow: hidden;
  clip-path: inset(50%); white-space: nowrap;
}
`;

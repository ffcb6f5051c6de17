/** Links, lists, boxes to tick, tables, months, drawings and lines to sign on. */
export const partsStyle = `
time, data { unicode-bidi: isolate; }
.phone, .email { display: inline-block; max-inline-size: 100%; padding-block: .15em; overflow-wrap: anywhere; }
.phone { font-weight: 700; }
.ring > .phone {
  display: block;
  inline-size: fit-content;
  min-inline-size: min(100%, 14rem);
  margin-block: .35rem;
  padding: .5em .9em;
  border: 2px solid var(--accent);
  border-radius: .4rem;
  background: var(--accent);
  color: var(--on-accent);
  font-size: 1.3em;
  line-height: 1.25;
  text-align: center;
  text-decoration: none;
  forced-color-adjust: none;
}

#tools { display: flex; flex-wrap: wrap; gap: .8rem; margin-block-start: 3rem; }
#tools:empty { display: none; }
button, .button {
  padding: .6em 1em; border: 2px solid var(--accent); border-radius: .4rem; background: none; color: var(--accent);
  font: inherit; font-weight: 700; line-height: 1.25; text-decoration: none;
}
.now h3 { margin-block: 1.3em .3em; }
.now h3 + .body { margin-block-end: .3em; }
@media screen { .knows ~ #next { display: none; } }

ul, ol { padding-inline-start: 1.3em; }
li { margin-block-end: .55em; }
li::marker { color: var(--accent); font-weight: 700; }
.note { margin: .1em 0 0; }
ul.tick { list-style: none; padding: 0; }
.tickable { display: flex; gap: .7em; align-items: start; padding-block: .15em; }
.tick .note { margin-inline-start: 2.2rem; }
input {
  appearance: none; flex: none; display: inline-grid; place-content: center;
  inline-size: 1.5rem; block-size: 1.5rem; margin: 0; vertical-align: -.4rem;
  border: 2px solid var(--ink); border-radius: .2rem; background: var(--paper);
}
input:checked::before {
  content: ""; inline-size: .45rem; block-size: .9rem; margin-block-end: .2rem;
  border: solid var(--ink); border-width: 0 .2rem .2rem 0; transform: rotate(45deg);
}
td input { margin-inline-end: .4em; }
@media (forced-colors: active) { input { appearance: auto; } }

table { border-collapse: collapse; inline-size: 100%; }
caption { text-align: start; font-weight: 700; margin-block-end: .4em; }
th, td { padding: .5em .6em; text-align: start; vertical-align: top; border-block-end: 1px solid var(--rule); }
th:first-child { padding-inline-start: 0; }
thead th, thead td { border-block-end: 2px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: 400; }
th time { white-space: nowrap; }
@media screen and (max-width: 34rem) { th time { white-space: normal; } }
tfoot th, tfoot td { font-weight: 700; border-block-end: 0; }
tbody + tfoot tr:first-child > * { border-block-start: 2px solid var(--ink); }
.center { text-align: center; }
.end { text-align: end; overflow-wrap: normal; font-variant-numeric: tabular-nums; }
.heading { display: none; }
@media screen and (max-width: 34rem) {
  th, td { padding-inline: .3em; }
  th { overflow-wrap: anywhere; hyphens: auto; }
  .wide, .wide tbody, .wide tfoot, .wide tr, .wide th, .wide td { display: block; }
  .wide thead { display: none; }
  .wide tr { padding-block: .7em; border-block-end: 1px solid var(--rule); }
  .wide tr > *, .wide tfoot tr:first-child > * { padding: .25em 0; border: 0; text-align: start; }
  .wide th { font-weight: 700; }
  .wide td { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, max-content); gap: 1em; align-items: center; }
  .wide td:empty { display: none; }
  .form tr { display: grid; grid-template-columns: repeat(auto-fill, minmax(4.2rem, 1fr)); gap: .2em; }
  .form tr > th { grid-column: 1 / -1; }
  .form tr > td { display: flex; flex-direction: column; gap: .1em; align-items: center; text-align: center; }
  .wide .heading { display: block; color: var(--quiet); font-size: .89rem; }
  .wide tr:has(.end) { display: flex; flex-wrap: wrap; align-items: end; gap: 0 .5em; }
  .wide tr:has(.end) > th { flex: 1 0 100%; }
  .wide tr:has(.end) > td { display: block; flex: 1 1 3.6rem; font-size: .89rem; }
  .wide tbody + tfoot { border-block-start: 2px solid var(--ink); }
}

@media screen and (min-width: 30.01em) {
  .many { table-layout: fixed; font-size: .84rem; }
  .many th, .many td { padding-inline: .15em; overflow-wrap: anywhere; hyphens: auto; }
  .many thead > tr > :first-child { inline-size: 22%; }
}

.beside { table-layout: fixed; font-size: .89rem; }
.beside th:last-child, .beside td:last-child { inline-size: 7em; color: var(--quiet); }
body:has(.beside) { max-inline-size: 60rem; }

.month { margin-block: 0 2em; break-inside: avoid; }
.month table { table-layout: fixed; margin-block-end: .6em; }
.month th, .month td { position: relative; padding: .15em 0; border: 0; text-align: center; font-weight: 400; }
.month th { color: var(--quiet); font-size: .78rem; }
.outside { color: var(--quiet); }
.outside .day { font-size: .8em; }
.day {
  display: inline-grid; place-content: center; min-inline-size: 2em; min-block-size: 2em; padding: .1em;
  forced-color-adjust: none; border: 2px solid transparent; border-radius: 50%; line-height: 1; font-variant-numeric: tabular-nums;
}
.discharge { border-radius: 0; border-color: var(--ink); }
.possible { border: 2px dotted var(--accent); }
.expected { border: 2px solid var(--accent); }
.booked { background: var(--accent); border-color: var(--accent); color: var(--on-accent); font-weight: 700; }
.closed { text-decoration: line-through 2px; color: var(--quiet); }
.legend { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .3em 1.4em; font-size: .89rem; }
.legend li { display: flex; align-items: center; gap: .5em; margin: 0; }
.legend .day { flex: none; }

/* A camera reads dark on light only. */
.visit-code { --ink: #000; --quiet: #333; --pale: #fff; --paper: #fff; background: #fff; color: #000; }

svg { display: block; overflow: visible; inline-size: 100%; block-size: auto; max-inline-size: 36rem; }
svg text { fill: var(--ink); font-family: inherit; }
.fill-ink { fill: var(--ink); }
.fill-accent { fill: var(--accent); }
.fill-pale { fill: var(--pale); }
.fill-none { fill: none; }
.stroke-ink { stroke: var(--ink); }
.stroke-accent { stroke: var(--accent); }
figcaption { margin-block-start: .4em; }
svg.narrow { display: none; max-inline-size: 24rem; }
@media screen and (max-width: 40rem) {
  svg:has(+ .narrow) { display: none; }
  svg.narrow { display: block; }
  figure.wide { display: none; }
}

.columns { display: grid; gap: 0 2rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 15rem), 1fr)); }

.signatures { display: grid; gap: 0 1.5rem; margin-block-end: 2rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 14rem), 1fr)); }
.signature { margin: 3rem 0 0; padding-block-start: .3em; border-block-start: 1px solid var(--ink); font-size: .89rem; }
`;

// The arrows. Left may import right (always itself); anything else is an error.
// A path ending in .ts opens that one file, and not its folder.
const arrows = {
  problems: [],
  plan: ["problems"],
  tables: ["problems"],
  compute: ["plan/plan.ts", "tables", "problems"],
  handout: ["problems"],
  locale: ["problems"],
  logo: ["problems"],
  compose: ["compute/facts.ts", "handout", "locale", "problems"],
  render: ["handout", "logo/logo.ts", "problems"],
  reading: ["handout", "tables", "problems"],
  send: ["problems"],
  journal: ["problems"],
  io: ["problems"],
  cli: ["index.ts", "io", "journal", "problems", "send"],
};
// A package with a strong opinion lives in one folder.
const homes = { yaml: "plan", handlebars: "compose", pdfkit: "render/pdf", "@resvg/resvg-wasm": "logo", saxes: "logo" };

const esc = (path) => path.replaceAll(".", "[.]");
const open = (path) => (path.endsWith(".ts") ? `^src/${esc(path)}$` : `^src/${path}/`);

export default {
  forbidden: [
    ...Object.entries(arrows).map(([from, to]) => ({
      name: `${from}-arrows`,
      severity: "error",
      comment: `src/${from} may import only: ${to.join(", ") || "nothing"}. See DEVELOPERS.md, "Arrows".`,
      from: { path: `^src/${from}/` },
      to: { path: "^src/", pathNot: [`^src/${from}/`, ...to.map(open)] },
    })),
    {
      name: "known-folder",
      severity: "error",
      comment: "A new folder under src needs a line in `arrows`.",
      from: { path: `^src/(?!(${Object.keys(arrows).join("|")})/|index[.]ts$)` },
      to: {},
    },
    {
      name: "resolves",
      severity: "error",
      comment: "An import must lead to a file; hast and mdast are types alone, which the compiler finds.",
      from: {},
      to: { couldNotResolve: true, pathNot: "^(hast|mdast)$" },
    },
    {
      name: "shared-by-tables-only",
      severity: "error",
      comment: "Data tables are checked once, on the way in.",
      from: { path: "^src/", pathNot: "^src/tables/" },
      to: { path: "^shared/" },
    },
    {
      name: "renderers-are-strangers",
      severity: "error",
      comment: "A renderer reads the handout and no other renderer.",
      from: { path: "^src/render/([^/]+)/" },
      to: { path: "^src/render/", pathNot: "^src/render/$1/" },
    },
    {
      name: "contracts-are-leaves",
      severity: "error",
      comment: "plan.ts, facts.ts and handout.ts hold types and import at most types.",
      from: { path: "^src/(plan/plan|compute/facts|handout/handout)[.]ts$" },
      to: { dependencyTypesNot: ["type-only"] },
    },
    {
      name: "files-only-in-io",
      severity: "error",
      comment: "Stages are pure; reading and writing is src/io.",
      from: { path: "^src/", pathNot: "^src/(io|cli)/" },
      to: { path: "^(node:)?(fs|fs/promises|net|http|https|child_process|os|process)$" },
    },
    {
      name: "pipeline-is-pure",
      severity: "error",
      comment: "index.ts joins stages and does not read files or arguments.",
      from: { path: "^src/index[.]ts$" },
      to: { path: "^src/(io|cli)/" },
    },
    ...Object.entries(homes).map(([pkg, home]) => ({
      name: `${pkg}-home`,
      severity: "error",
      comment: `${pkg} is used only in src/${home}.`,
      from: { pathNot: `^src/${home}/` },
      to: { path: `node_modules/${pkg}/` },
    })),
    {
      name: "across-by-hash",
      severity: "error",
      comment: "Between folders of src import by #folder/file.js, within one by ./file.js.",
      from: { path: "^src/([^/]+)/" },
      to: { path: "^src/", pathNot: "^src/$1/", dependencyTypesNot: ["aliased-subpath-import"] },
    },
    {
      name: "examples-use-the-front-door",
      severity: "error",
      comment: "An example shows what a user can do: the package's two entries, the pipeline and the files that ship.",
      from: { path: "^examples/" },
      to: { path: "^src/", pathNot: "^src/(index|io/shipped)[.]ts$" },
    },
    { name: "src-knows-no-tests", severity: "error", from: { path: "^src/" }, to: { path: "^(tests|examples)/" } },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "no-orphans",
      severity: "error",
      from: { orphan: true, path: "^src/", pathNot: "^src/cli/main[.]ts$|[.]d[.]ts$" },
      to: {},
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: "node_modules",
    exclude: "^dist/",
    enhancedResolveOptions: {
      conditionNames: ["source", "import", "node"],
      exportsFields: ["exports"],
      extensions: [".ts", ".js", ".json"],
    },
  },
};

/** The command as it can be called again: where npx ran it, a shell alone may not find it. */
export const called = (env: NodeJS.ProcessEnv = process.env): string =>
  env["npm_command"] === "exec" ? "npx hearthsheet" : "hearthsheet";

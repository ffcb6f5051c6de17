import { Argument, Command } from "commander";
import { quoted } from "./quoted.js";

const manual = `
Prints a script that completes commands, flags and their choices, and file names, in
your shell.

Examples:
  hearthsheet completion bash >> ~/.bashrc
  hearthsheet completion zsh > "\${fpath[1]}/_hearthsheet"
  hearthsheet completion fish > ~/.config/fish/completions/hearthsheet.fish`;

const shells = { bash, zsh, fish };
type Shell = keyof typeof shells;

/** program: the whole command line, once it is put together. */
export const completionCommand = (program: () => Command): Command =>
  new Command("completion")
    .description("Print a script that completes the command line in a shell.")
    .addArgument(new Argument("<shell>", "your shell").choices(Object.keys(shells)))
    .addHelpText("after", manual)
    .action((shell: Shell) => {
      process.stdout.write(shells[shell](wordsOf(program())));
    });

/** A command by its whole name ("new clinic", "" the tool itself), and what may follow it. */
type Words = {
  name: string;
  about: string;
  flags: { flag: string; about: string; choices: string[] }[];
  below: string[];
};

export function wordsOf(command: Command, name = ""): Words[] {
  const flags = command.options.flatMap(({ long, description, argChoices = [] }) =>
    long ? [{ flag: long, about: description, choices: [...argChoices] }] : [],
  );
  const help = { flag: "--help", about: "display help for command", choices: [] };
  const choices = command.registeredArguments.flatMap(({ argChoices = [] }) => argChoices);
  const below = [...command.commands.map((one) => one.name()), ...choices];
  return [
    { name, about: command.description(), flags: [...flags, help], below },
    ...command.commands.flatMap((one) => wordsOf(one, `${name} ${one.name()}`.trim())),
  ];
}

/** Which command stands in the line so far: the longest that its words begin with. */
function bash(words: readonly Words[]): string {
  const cases = words.map(
    ({ name, flags, below }) => `    "${name}") list="${[...below, ...flags.map(({ flag }) => flag)].join(" ")}" ;;`,
  );
  const choices = words.flatMap(({ flags }) => flags.filter((one) => one.choices.length > 0));
  const byFlag = new Map(choices.map(({ flag, choices }) => [flag, choices.join(" ")]));
  return `# hearthsheet completion bash
_hearthsheet() {
  local current="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" list=""
  case "$before" in
${[...byFlag].map(([flag, list]) => `    ${flag}) COMPREPLY=($(compgen -W "${list}" -- "$current")); return ;;`).join("\n")}
  esac
  local name="" try
  for try in "\${COMP_WORDS[1]}" "\${COMP_WORDS[1]} \${COMP_WORDS[2]}"; do
    case "$try" in
      ${words
        .slice(1)
        .map(({ name }) => `"${name}"`)
        .join("|")}) [ "$try" = "$current" ] || name="$try" ;;
    esac
  done
  case "$name" in
${cases.join("\n")}
  esac
  COMPREPLY=($(compgen -W "$list" -- "$current") $([ -n "$name" ] && [[ "$current" != -* ]] && compgen -f -- "$current"))
}
complete -o filenames -F _hearthsheet hearthsheet
`;
}

function zsh(words: readonly Words[]): string {
  const escaped = (text: string) => text.replaceAll("\\", "\\\\").replaceAll(":", "\\:");
  const described = (word: string, about: string) => quoted(`${escaped(word)}:${escaped(about)}`);
  const cases = words.slice(1).map(({ name, flags, below }) => {
    const options = flags.map(({ flag, about }) => described(flag, about)).join(" ");
    return `    ${quoted(name)}) below=(${below.map(quoted).join(" ")}) flags=(${options}) ;;`;
  });
  const choices = words.flatMap(({ flags }) => flags.filter((one) => one.choices.length > 0));
  const byFlag = new Map(choices.map(({ flag, choices }) => [flag, choices.map(quoted).join(" ")]));
  const commands = words.filter(({ name }) => name !== "" && !name.includes(" "));
  // Found in fpath the file is the function and is run when it is first called; sourced, it only says which command it is for.
  return `#compdef hearthsheet
# hearthsheet completion zsh
_hearthsheet() {
  local -a below flags
  local name="\${words[2]}"
  if (( CURRENT == 2 )); then
    below=(${commands.map(({ name, about }) => described(name, about)).join(" ")})
    _describe command below
    return
  fi
  case "\${words[CURRENT-1]}" in
${[...byFlag].map(([flag, list]) => `    ${flag}) below=(${list}); _describe choice below; return ;;`).join("\n")}
  esac
  (( CURRENT > 3 )) && [[ "$name \${words[3]}" == "new clinic" ]] && name="new clinic"
  case "$name" in
${cases.join("\n")}
  esac
  if [[ "\${words[CURRENT]}" == -* ]]; then
    _describe -o option flags
  else
    (( CURRENT == 3 )) && (( \${#below} )) && _describe word below
    _files
  fi
}
if [[ "\${funcstack[1]}" == _hearthsheet ]]; then _hearthsheet "$@"; else compdef _hearthsheet hearthsheet; fi
`;
}

function fish(words: readonly Words[]): string {
  const fishQuoted = (text: string) => `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;
  return `# hearthsheet completion fish
complete -c hearthsheet -n __fish_use_subcommand -f
${words
  .flatMap(({ name, about, flags, below }) => {
    const [parent = ""] = name.split(" ").slice(0, -1);
    const within = name === "" ? "__fish_use_subcommand" : `__fish_seen_subcommand_from ${name.split(" ").at(-1)}`;
    const self =
      name === ""
        ? []
        : [
            `complete -c hearthsheet -n ${fishQuoted(parent ? `__fish_seen_subcommand_from ${parent}` : "__fish_use_subcommand")} -a ${name.split(" ").at(-1)} -d ${fishQuoted(about)}`,
          ];
    const plain = name === "" ? [] : below.map((one) => `complete -c hearthsheet -n ${fishQuoted(within)} -a ${one}`);
    const own = flags.map(
      ({ flag, about, choices }) =>
        `complete -c hearthsheet -n ${fishQuoted(within)} -l ${flag.slice(2)} -d ${fishQuoted(about)}${choices.length > 0 ? ` -x -a ${fishQuoted(choices.join(" "))}` : ""}`,
    );
    return [...self, ...plain, ...own];
  })
  .join("\n")}
`;
}

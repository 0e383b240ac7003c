import { type Argument, Command, type Option } from "commander";
import { EXIT } from "./exit-codes.js";

const SHELLS = ["bash", "zsh", "fish"] as const;
type Shell = (typeof SHELLS)[number];

/** What may stand in a place: one of some words, a file, a folder, a name that only the user knows, or nothing at all. */
type Place = { readonly words: readonly string[] } | "file" | "folder" | "free" | "none";

interface Flag {
  readonly long: string;
  readonly says: string;
  readonly takes: Place;
}

interface Node {
  /** Words after `branchwork`; empty for the program itself. */
  readonly path: readonly string[];
  readonly says: string;
  readonly commands: readonly string[];
  readonly flags: readonly Flag[];
  readonly takes: Place;
}

const FILES = /<(file|program)>/;
const FILE_ARGUMENTS = new Set(["job", "jobs", "file", "packet", "old", "new", "a", "b", "reports"]);

const flagOf = (option: Option): Flag => ({
  long: option.long ?? option.flags,
  says: option.description,
  takes: option.argChoices
    ? { words: option.argChoices }
    : !option.required && !option.optional
      ? "none"
      : FILES.test(option.flags)
        ? "file"
        : option.flags.includes("<folder>")
          ? "folder"
          : "free",
});

function placeOf(args: readonly Argument[]): Place {
  const first = args[0];
  if (!first) return "none";
  if (first.argChoices) return { words: first.argChoices };
  return FILE_ARGUMENTS.has(first.name()) ? "file" : "free";
}

/** Every command of a program with what it takes, parents before their children. */
function nodesOf(command: Command, path: readonly string[] = []): Node[] {
  const help = command.createHelp();
  const under = help.visibleCommands(command).filter((each) => each.name() !== "help");
  const flags = help.visibleOptions(command).map(flagOf);
  return [
    { path, says: command.description(), commands: under.map((each) => each.name()), flags, takes: placeOf(command.registeredArguments) },
    ...under.flatMap((each) => nodesOf(each, [...path, each.name()])),
  ];
}

const quoted = (text: string) => `'${text.replaceAll("'", "'\\''")}'`;
const key = (path: readonly string[]) => path.join(" ");

/** Bash lines that offer what may stand in a place. */
function bashOffer(place: Place, path: readonly string[]): string {
  if (typeof place === "object") return `COMPREPLY=($(compgen -W ${quoted(place.words.join(" "))} -- "$cur"))`;
  if (place === "file") return `compopt -o filenames; COMPREPLY=($(compgen -f -- "$cur"))`;
  if (place === "folder") return `compopt -o filenames; COMPREPLY=($(compgen -d -- "$cur"))`;
  if (place === "free" && key(path) === "calc") return `COMPREPLY=($(compgen -W "$(branchwork calc --list 2>/dev/null | cut -d ' ' -f 1)" -- "$cur"))`;
  return ":";
}

function bash(nodes: readonly Node[]): string {
  const steps = nodes.filter(({ path }) => path.length > 0).map(({ path }) => `      "${key(path.slice(0, -1))}/${path.at(-1)}") at="${key(path)}" ;;`);
  const values = nodes.flatMap(({ path, flags }) =>
    flags.filter(({ takes }) => takes !== "none").map(({ long, takes }) => `    "${key(path)}/${long}") ${bashOffer(takes, [])}; return ;;`),
  );
  const rest = nodes.map(({ path, commands, flags, takes }) => {
    const offer = commands.length > 0 ? bashOffer({ words: commands }, path) : bashOffer(takes, path);
    const dashes = `COMPREPLY=($(compgen -W ${quoted(flags.map(({ long }) => long).join(" "))} -- "$cur"))`;
    return `    "${key(path)}") if [[ $cur == -* ]]; then ${dashes}; else ${offer}; fi ;;`;
  });
  return `# bash completion of branchwork: put this where bash reads completions, or source <(branchwork completion bash)
_branchwork() {
  local cur=\${COMP_WORDS[COMP_CWORD]} prev=\${COMP_WORDS[COMP_CWORD - 1]} at="" word
  COMPREPLY=()
  for word in "\${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
    case "$at/$word" in
${steps.join("\n")}
    esac
  done
  case "$at/$prev" in
${values.join("\n")}
  esac
  case "$at" in
${rest.join("\n")}
  esac
}
complete -F _branchwork branchwork
`;
}

function zshPlace(place: Place, path: readonly string[]): string {
  if (typeof place === "object") return `(${place.words.join(" ")})`;
  if (place === "file") return "_files";
  if (place === "folder") return "_files -/";
  return key(path) === "calc" ? `(\${(f)"$(branchwork calc --list 2>/dev/null | cut -d " " -f 1)"})` : " ";
}

/** Square brackets and colons part the fields of a specification. */
const zshText = (text: string) => text.replace(/[[\]:\\]/g, "\\$&");

function zsh(nodes: readonly Node[]): string {
  const named = (path: readonly string[]) => ["_branchwork", ...path].join("_").replaceAll("-", "_");
  const bodies = nodes.map(({ path, commands, flags, takes }) => {
    const specs = flags.map(({ long, says, takes: value }) => quoted(`${long}[${zshText(says)}]${value === "none" ? "" : `: :${zshPlace(value, [])}`}`));
    if (commands.length === 0)
      return `${named(path)}() {\n  _arguments ${[...specs, ...(takes === "none" ? [] : [quoted(`*: :${zshPlace(takes, path)}`)])].join(" \\\n    ")}\n}`;
    const children = commands.map((name) => quoted(`${name}:${zshText(nodes.find((node) => key(node.path) === key([...path, name]))!.says)}`));
    return `${named(path)}() {
  local line state
  _arguments -C ${[...specs, "'1: :->command'", "'*::argument:->argument'"].join(" \\\n    ")}
  case $state in
    command) local -a commands=(${children.join(" ")}); _describe command commands ;;
    argument) case $line[1] in
${commands.map((name) => `      ${name}) ${named([...path, name])} ;;`).join("\n")}
    esac ;;
  esac
}`;
  });
  return `#compdef branchwork
# zsh completion of branchwork: save as _branchwork in a folder of $fpath, or source <(branchwork completion zsh)
${bodies.reverse().join("\n")}
if [[ $funcstack[1] == _branchwork ]]; then _branchwork "$@"; else compdef _branchwork branchwork; fi
`;
}

function fish(nodes: readonly Node[]): string {
  const lines = nodes.flatMap(({ path, commands, flags, takes }) => {
    // The last word of a path may also be a command elsewhere, so every word of it has to be there, and no child yet.
    const seen = path.map((word) => `__fish_seen_subcommand_from ${word}`);
    const when =
      path.length === 0
        ? "__fish_use_subcommand"
        : [...seen, ...(commands.length > 0 ? [`not __fish_seen_subcommand_from ${commands.join(" ")}`] : [])].join("; and ");
    const line = (more: string) => `complete -c branchwork -n ${quoted(when)} ${more}`;
    const places: Record<string, string> = { file: "-r -F", folder: "-x -a '(__fish_complete_directories)'", free: "-x", none: "-f" };
    const place = (value: Place) => (typeof value === "object" ? `-x -a ${quoted(value.words.join(" "))}` : places[value]!);
    const says = (name: string) => nodes.find((node) => key(node.path) === key([...path, name]))!.says;
    return [
      ...commands.map((name) => line(`-f -a ${name} -d ${quoted(says(name))}`)),
      ...flags
        .filter(({ long }) => long.startsWith("--"))
        .map(({ long, says: told, takes: value }) => line(`-l ${long.slice(2)} ${place(value)} -d ${quoted(told)}`)),
      ...(commands.length > 0
        ? []
        : [line(key(path) === "calc" ? "-f -a \"(branchwork calc --list 2>/dev/null | string split -f 1 ' ')\"" : takes === "file" ? "-F" : place(takes))]),
    ];
  });
  return `# fish completion of branchwork: branchwork completion fish > ~/.config/fish/completions/branchwork.fish
${[...new Set(lines)].join("\n")}
`;
}

const WRITERS: Record<Shell, (nodes: readonly Node[]) => string> = { bash, zsh, fish };

/** The completion script of a program for one shell. */
export const completionOf = (program: Command, shell: Shell): string => WRITERS[shell](nodesOf(program));

/** `completion`: a script that lets a shell complete commands, options and file names. */
export function completionCommand(program: Command): Command {
  const command = new Command("completion").description("print a script by which a shell completes commands, options and files");
  const argument = command.createArgument("<shell>", "which shell").choices(SHELLS);
  return command.addArgument(argument).action((shell: Shell) => {
    process.stdout.write(completionOf(program, shell));
    process.exitCode = EXIT.ready;
  });
}

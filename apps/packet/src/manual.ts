import { Command, type Option } from "commander";
import { EXIT } from "./exit-codes.js";

/** Text as roff takes it: a backslash, a dash and a leading dot have a meaning of their own. */
const roff = (text: string) =>
  text
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replace(/^([.'])/gm, "\\&$1");
const sentence = (text: string) => roff(`${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.;:]$/.test(text) ? "" : "."}`);

function optionLines(option: Option): string[] {
  const more = [
    ...(option.argChoices ? [`One of ${option.argChoices.join(", ")}.`] : []),
    ...(typeof option.defaultValue === "string" ? [`Left out: ${option.defaultValue}.`] : []),
    ...(option.mandatory ? ["Has to be given."] : []),
  ];
  return [".TP", `.B ${roff(option.flags)}`, [sentence(option.description), ...more.map(roff)].join(" ")];
}

/** The leaves under a command, each with its whole name. */
function leaves(command: Command, path: readonly string[] = []): { readonly name: string; readonly command: Command }[] {
  const under = command.createHelp().visibleCommands(command);
  if (path[0] === "help" || path.at(-1) === "help") return [];
  return under.filter((each) => each.name() !== "help").length === 0
    ? [{ name: path.join(" "), command }]
    : under.flatMap((each) => leaves(each, [...path, each.name()]));
}

function commandLines({ name, command }: { readonly name: string; readonly command: Command }): string[] {
  const takes = command.registeredArguments.map(
    (each) => `${each.required ? "<" : "["}${each.name()}${each.variadic ? "..." : ""}${each.required ? ">" : "]"}`,
  );
  const options = command.options.filter((option) => !option.hidden);
  const usage = [name, ...(options.length > 0 ? ["[options]"] : []), ...takes].join(" ");
  const said = command.registeredArguments.filter((each) => each.description !== "");
  return [
    `.SS ${roff(usage)}`,
    sentence(command.description()),
    ...said.flatMap((each) => [
      ".TP",
      `.I ${roff(each.name())}`,
      sentence(each.description) + (each.argChoices ? ` One of ${each.argChoices.join(", ")}.` : ""),
    ]),
    ...options.flatMap(optionLines),
  ];
}

/** The page branchwork(1), for man. Undated, so that the same program gives the same page. */
export function manualOf(program: Command): string {
  return `${[
    '.\\" Generated from the program by branchwork manual. Do not edit.',
    '.TH BRANCHWORK 1 "" "branchwork" "User commands"',
    ".SH NAME",
    "branchwork \\- permit packets for electrical circuits at a house",
    ".SH SYNOPSIS",
    ".B branchwork",
    "\\fIcommand\\fR [\\fIoptions\\fR] [\\fIarguments\\fR]",
    ".SH DESCRIPTION",
    sentence(program.description()),
    "A job file says what is wanted and what stands there; an overlay says what the town asks; the packet says every number with the section it rests on.",
    ".PP",
    roff(
      "A packet is a preparer's aid, not an approval. The authority having jurisdiction decides. Main off does not de-energize the service conductors and the lugs ahead of it.",
    ),
    ".SH COMMANDS",
    ...leaves(program).flatMap(commandLines),
    ".SH EXIT STATUS",
    ...[
      ["0", "Ready: no check fails."],
      ["1", "Findings that fail; build still writes the packet, with the findings in it."],
      ["2", "Bad input: a file, a field or an option, with its line and column."],
      ["3", "Environment: no browser that prints, no room, no right to write."],
    ].flatMap(([code, says]) => [".TP", `.B ${code}`, says!]),
    ".SH ENVIRONMENT",
    ".TP",
    ".B NO_COLOR",
    "When set, nothing is printed in bold.",
  ].join("\n")}\n`;
}

/** `manual`: the manual page on standard output. */
export function manualCommand(program: Command): Command {
  return new Command("manual").description("print the manual page; branchwork manual | man -l - reads it").action(() => {
    process.stdout.write(manualOf(program));
    process.exitCode = EXIT.ready;
  });
}

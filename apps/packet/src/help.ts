import { Command } from "commander";

/** Each command's heading in the overview, and calls of it that a reader can copy. */
const ENTRIES: Readonly<Record<string, readonly [heading: string, ...calls: string[]]>> = {
  new: ["One job:", "branchwork new my-job.yaml"],
  check: ["One job:", "branchwork check my-job.yaml --overlay my-town.yaml", "branchwork check my-job.yaml --edition 2026 --json"],
  build: ["One job:", "branchwork build my-job.yaml --overlay my-town.yaml --out packet", "branchwork build my-job.yaml --format pdf --force"],
  revise: ["One job:", 'branchwork revise as-issued.yaml now.yaml --number 1 --what "Trench moved to the fence" --out revision-1'],
  choose: ["One job:", "branchwork choose my-job.yaml --prices prices.yaml --hold material"],
  materials: ["One job:", "branchwork materials my-job.yaml --prices prices.yaml", "branchwork materials my-job.yaml --csv > list.csv"],
  compare: ["One job:", "branchwork compare my-job.yaml --from 2020 --to 2023"],
  readings: [
    "One job:",
    "branchwork readings my-job.yaml --meter high-impedance",
    "branchwork readings my-job.yaml --idle L1-N=121.8,L2-N=122.1,L1-L2=243.9,L1-G=121.8,L2-G=122.1,N-G=0.1",
  ],
  verify: ["A finished packet:", "branchwork verify packet/my-job.pdf"],
  open: ["A finished packet:", "branchwork open packet/my-job.pdf --out again"],
  batch: ["Many jobs:", "branchwork batch jobs --overlay my-town.yaml --out packets", "branchwork batch 'jobs/**/*.yaml' --shard 1/4 --out part-1"],
  "batch-merge": ["Many jobs:", "branchwork batch-merge part-*/report.jsonl --out all"],
  enqueue: ["Many jobs:", "branchwork enqueue jobs --queue redis://127.0.0.1:6379/0 --wait"],
  work: ["Many jobs:", "branchwork work --queue redis://127.0.0.1:6379/0 --out packets --jobs 2"],
  overlay: ["A town:", "branchwork overlay new my-town.yaml", "branchwork overlay check my-town.yaml"],
  "overlay new": ["", "branchwork overlay new my-town.yaml"],
  "overlay check": ["", "branchwork overlay check my-town.yaml --date 2026-11-25"],
  "overlay explain": ["", "branchwork overlay explain my-town.yaml"],
  "overlay diff": ["", "branchwork overlay diff last-year.yaml my-town.yaml --job my-job.yaml"],
  calc: [
    "For other programs:",
    "branchwork calc --list",
    "branchwork calc voltage-drop --example",
    "branchwork calc voltage-drop < given.jsonl > results.jsonl",
  ],
  serve: ["In a browser:", "branchwork serve"],
  completion: ["The command itself:", "source <(branchwork completion bash)"],
  manual: ["The command itself:", "branchwork manual | man -l -"],
};

/** Sorts the commands under headings and gives each an example in its help. */
export function arrangeHelp(program: Command, path: readonly string[] = []): void {
  if (path.length === 0)
    program.addHelpCommand(new Command("help").argument("[command]").helpOption(false).description("the help of a command").helpGroup("The command itself:"));
  for (const command of program.commands) {
    const name = [...path, command.name()];
    const [heading = "", ...calls] = ENTRIES[name.join(" ")] ?? [];
    if (heading !== "") command.helpGroup(heading);
    if (calls.length > 0) command.addHelpText("after", `\n${calls.length > 1 ? "Examples" : "Example"}:\n${calls.map((call) => `  ${call}`).join("\n")}`);
    arrangeHelp(command, name);
  }
}

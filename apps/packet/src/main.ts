#!/usr/bin/env node
import { readFileSync } from "node:fs";
import { Command, CommanderError, Option } from "commander";
import { completionCommand } from "./completion.js";
import { EXIT } from "./exit-codes.js";
import { arrangeHelp } from "./help.js";
import { manualCommand } from "./manual.js";
import { overlayCommand } from "./overlay/command.js";

const { version } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8")) as { version: string };

const program = new Command("branchwork")
  .version(version, "--version", "print the version")
  .description("From a job file to the paper that gets an electrical circuit permitted, built, inspected and tested.")
  .addHelpText(
    "before",
    `Examples:
  branchwork new my-job.yaml                      answer a few questions, get a commented job file
  branchwork check my-job.yaml                    findings on the terminal
  branchwork build my-job.yaml --out packet       PDF, HTML, JSON and one-line SVG
  branchwork batch jobs --out packets             the packets of a whole folder
  branchwork calc voltage-drop < given.json       one calculation, JSON in and out
`,
  )
  .addHelpText(
    "after",
    `
Exit codes: 0 ready; 1 findings that fail; 2 bad input; 3 the machine lacks something (browser, disk).

A packet is a preparer's aid, not an approval. The authority having jurisdiction decides. Main off does not
de-energize the service conductors and the lugs ahead of it.`,
  )
  .showSuggestionAfterError()
  .exitOverride();

const edition = () => new Option("--edition <year>", "code edition in place of the job's").choices(["2017", "2020", "2023", "2026"]);
const paper = () =>
  new Option("--paper <name>", "what it is printed on; as the overlay asks, else letter. tabloid and a3: drawings on the large sheet").choices([
    "letter",
    "tabloid",
    "a4",
    "a3",
  ]);

program
  .command("check")
  .description("say what does not hold in a job, by which section, and how to mend it")
  .argument("<job>", "job file, YAML")
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--json", "findings as JSON on standard output")
  .action(async (job: string, options) => {
    const { check } = await import("./check.js");
    process.exitCode = await check(job, options);
  });

program
  .command("build")
  .description("write the packet of a job")
  .argument("<job>", "job file, YAML")
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--out <folder>", "where to write", "packet")
  .option("--format <list>", "which of pdf,html,json,svg, with commas between", "pdf,html,json,svg")
  .option("--set <list>", "any of submittal,field,owner", "submittal")
  .option("--prices <file>", "price book for the owner's set, YAML")
  .addOption(paper())
  .option("--date <YYYY-MM-DD>", "date printed in the title block, today when left out")
  .option("--browser <program>", "browser that prints, in place of the bundled one")
  .option("--force", "overwrite files that are there")
  .option("--json", "a summary as JSON on standard output")
  .action(async (job: string, options) => {
    const { build } = await import("./build.js");
    process.exitCode = await build(job, options);
  });

program
  .command("verify")
  .description("work the job inside a packet again and say whether each printed number still holds")
  .argument("<packet>", "packet PDF")
  .option("--json", "the result as JSON on standard output")
  .action(async (file: string, options) => {
    const { verify } = await import("./carried/verify.js");
    process.exitCode = await verify(file, options);
  });

program
  .command("open")
  .description("give back the job file a packet was made from")
  .argument("<packet>", "packet PDF")
  .option("--out <folder>", "where to write", ".")
  .option("--force", "overwrite files that are there")
  .action(async (file: string, options) => {
    const { openPacket } = await import("./carried/open-packet.js");
    process.exitCode = await openPacket(file, options);
  });

program
  .command("batch")
  .description("write the packets of many jobs, and one report; goes on where it was stopped")
  .argument("<jobs...>", "job files, folders of them, or globs")
  .requiredOption("--out <folder>", "where packets and report go")
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--format <list>", "which of pdf,html,json,svg, with commas between", "pdf")
  .option("--set <list>", "any of submittal,field,owner", "submittal")
  .option("--prices <file>", "price book for the owner's set, YAML")
  .addOption(paper())
  .option("--date <YYYY-MM-DD>", "date printed in the title block, today when left out")
  .option("--jobs <n>", "packets printed side by side, as many as cores when left out")
  .option("--limit <seconds>", "time a packet may take to print", "60")
  .option("--shard <i/n>", "only the i-th of n parts, counted from 1")
  .option("--browser <program>", "browser that prints, in place of the bundled one")
  .option("--force", "make again what stands unchanged")
  .option("--json", "a summary as JSON on standard output")
  .action(async (jobs: string[], options) => {
    const { batch } = await import("./batch/batch.js");
    process.exitCode = await batch(jobs, options);
  });

program
  .command("batch-merge")
  .description("make one report of several parts of a batch")
  .argument("<reports...>", "report files")
  .requiredOption("--out <folder>", "where report.jsonl and summary.html go")
  .option("--date <YYYY-MM-DD>", "date in the summary's heading, today when left out")
  .option("--json", "a summary as JSON on standard output")
  .action(async (reports: string[], options) => {
    const { batchMerge } = await import("./batch/merge.js");
    process.exitCode = await batchMerge(reports, options);
  });

program
  .command("calc")
  .description("one calculation: JSON on standard input, JSON out, one result a line")
  .argument("[name]", "calculation, by the name --list gives it")
  .option("--list", "name the calculations")
  .option("--schema", "JSON Schema of what it is given")
  .option("--example", "an object it takes")
  .addOption(
    new Option("--edition <year>", "code edition in place of the objects', where the calculation goes by it").choices(["2017", "2020", "2023", "2026"]),
  )
  .action(async (name: string | undefined, options) => {
    const { calc } = await import("./calc.js");
    process.exitCode = await calc(name, options, process.stdin);
  });

program
  .command("enqueue")
  .description("put jobs into a queue that workers make packets from; each once")
  .argument("<jobs...>", "job files, folders of them, or globs")
  .requiredOption("--queue <address>", "Redis server, as redis://127.0.0.1:6379/0")
  .option("--name <queue>", "the queue's name", "packets")
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--format <list>", "which of pdf,html,json,svg, with commas between", "pdf")
  .option("--set <list>", "any of submittal,field,owner", "submittal")
  .option("--prices <file>", "price book for the owner's set, YAML")
  .addOption(paper())
  .option("--date <YYYY-MM-DD>", "date printed in the title block, today when left out")
  .option("--wait", "wait until all are made")
  .action(async (jobs: string[], options) => {
    const { enqueue } = await import("./work/enqueue.js");
    process.exitCode = await enqueue(jobs, options);
  });

program
  .command("work")
  .description("make the packets of a queue until told to end")
  .requiredOption("--queue <address>", "Redis server, as redis://127.0.0.1:6379/0")
  .requiredOption("--out <folder>", "where packets go, one folder each, named by the id")
  .option("--name <queue>", "the queue's name", "packets")
  .option("--jobs <n>", "packets printed side by side, as many as cores when left out")
  .option("--limit <seconds>", "time a packet may take to print", "60")
  .option("--lock <seconds>", "after which another worker takes what a lost one had", "30")
  .option("--browser <program>", "browser that prints, in place of the bundled one")
  .action(async (options) => {
    const { work } = await import("./work/work.js");
    process.exitCode = await work(options);
  });

program
  .command("serve")
  .description("the planner's page and a packet maker, for this machine alone, until told to end")
  .option("--port <n>", "port on 127.0.0.1; 0 takes a free one", "4717")
  .option("--browser <program>", "browser that prints, in place of the bundled one")
  .action(async (options) => {
    const { serve } = await import("./serve/serve.js");
    process.exitCode = await serve(options);
  });

program
  .command("readings")
  .description("judge meter readings taken at an outlet: pass, what to read next, or likely faults and what to stop")
  .argument("<job>", "job file, YAML")
  .option("--circuit <id>", "circuit of the outlet; may be left out where the job has one")
  .option("--file <file>", "readings, YAML; asked for on a terminal when left out")
  .option("--idle <list>", "readings with nothing connected, as L1-N=122.4,L1-G=122.5")
  .option("--loaded <list>", "readings with a load on, with --amperes and --across")
  .option("--amperes <amperes>", "what the load draws")
  .option("--across <pair>", "where the load is, as L1-N")
  .addOption(new Option("--meter <kind>", "what kind of meter").choices(["high-impedance", "low-impedance"]))
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--json", "the diagnosis as JSON on standard output")
  .action(async (job: string, options) => {
    const { readings } = await import("./readings.js");
    process.exitCode = await readings(job, options, { input: process.stdin, output: process.stdout });
  });

program
  .command("revise")
  .description("the packet of a changed job, with what changed told and marked")
  .argument("<old>", "packet PDF as it was, which carries its revisions; or job file as it was, YAML")
  .argument("<new>", "job file as it is now, YAML")
  .option("--number <number>", "number or letter of the revision; the next after the packet's, else 1, when left out")
  .option("--what <text>", "what was changed and why, for the revision table")
  .option("--overlay <file>", "the town's overlay, YAML")
  .option("--old-overlay <file>", "the overlay as it was, where it was another")
  .addOption(edition())
  .option("--out <folder>", "where to write", "packet")
  .option("--format <list>", "which of pdf,html,json,svg, with commas between", "pdf,html,json,svg")
  .option("--set <list>", "any of submittal,field,owner", "submittal")
  .option("--prices <file>", "price book for the owner's set, YAML")
  .addOption(paper())
  .option("--date <YYYY-MM-DD>", "date of the revision, today when left out")
  .option("--browser <program>", "browser that prints, in place of the bundled one")
  .option("--force", "overwrite files that are there")
  .option("--json", "what changed as JSON on standard output")
  .action(async (old: string, job: string, options) => {
    const { revise } = await import("./revise.js");
    process.exitCode = await revise(old, job, options);
  });

program
  .command("new")
  .description("answer a few questions and get a commented job file")
  .argument("<file>", "job file to write")
  .action(async (file: string) => {
    const { newJob } = await import("./new/new-job.js");
    process.exitCode = await newJob(file, { input: process.stdin, output: process.stdout });
  });

program.addCommand(overlayCommand().exitOverride());

program
  .command("materials")
  .description("what to buy and what it costs, what people regret leaving out, and the order of work")
  .argument("<job>", "job file, YAML")
  .option("--prices <file>", "price book, YAML")
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .addOption(new Option("--csv", "the list as CSV on standard output").conflicts("json"))
  .option("--json", "everything as JSON on standard output")
  .action(async (job: string, options) => {
    const { materials } = await import("./materials.js");
    process.exitCode = await materials(job, options);
  });

program
  .command("choose")
  .description("the cheapest lawful sizes, methods and materials of what the job leaves open")
  .argument("<job>", "job file, YAML")
  .requiredOption("--prices <file>", "price book, YAML")
  .addOption(new Option("--hold <what...>", "keep as the job has it").choices(["material", "method"]))
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--json", "the choice as JSON on standard output")
  .action(async (job: string, options) => {
    const { choose } = await import("./choose.js");
    process.exitCode = await choose(job, options);
  });

program
  .command("compare")
  .description("what changes for a job when one edition takes the place of another")
  .argument("<job>", "job file, YAML")
  .addOption(new Option("--from <year>", "edition in force").choices(["2017", "2020", "2023", "2026"]).makeOptionMandatory())
  .addOption(new Option("--to <year>", "edition that takes its place").choices(["2017", "2020", "2023", "2026"]).makeOptionMandatory())
  .option("--json", "the comparison as JSON on standard output")
  .action(async (job: string, options) => {
    const { compare } = await import("./compare.js");
    process.exitCode = await compare(job, options);
  });

program.addCommand(completionCommand(program).exitOverride());
program.addCommand(manualCommand(program).exitOverride());
arrangeHelp(program);

// A reader that has seen enough, such as head, closes the pipe: an end, not a bug.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? EXIT.ready : EXIT.badInput;
  else throw error;
}

#!/usr/bin/env node
import { Command, CommanderError, Option } from "commander";
import { EXIT } from "./exit-codes.js";

const program = new Command("branchwork")
  .description("From a job file to the paper that gets an electrical circuit permitted, built, inspected and tested.")
  .addHelpText(
    "before",
    `Examples:
  branchwork new my-job.yaml                      answer a few questions, get a commented job file
  branchwork check my-job.yaml                    findings on the terminal
  branchwork build my-job.yaml --out packet       PDF, HTML, JSON and one-line SVG
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

program
  .command("check")
  .description("read a job and say what does not hold")
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
  .description("write the packet")
  .argument("<job>", "job file, YAML")
  .option("--overlay <file>", "the town's overlay, YAML")
  .addOption(edition())
  .option("--out <folder>", "where to write", "packet")
  .option("--format <list>", "any of pdf,html,json,svg", "pdf,html,json,svg")
  .option("--date <YYYY-MM-DD>", "date printed in the title block, today when left out")
  .option("--browser <program>", "browser that prints, in place of the bundled one")
  .option("--force", "overwrite files that are there", false)
  .option("--json", "a summary as JSON on standard output")
  .action(async (job: string, options) => {
    const { build } = await import("./build.js");
    process.exitCode = await build(job, options);
  });

program
  .command("new")
  .description("answer a few questions and get a commented job file")
  .argument("<file>", "job file to write")
  .action(async (file: string) => {
    const { newJob } = await import("./new-job.js");
    process.exitCode = await newJob(file, { input: process.stdin, output: process.stdout });
  });

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? EXIT.ready : EXIT.badInput;
  else throw error;
}

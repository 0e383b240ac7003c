import { Command } from "commander";

/** `overlay` with its four commands. */
export function overlayCommand(): Command {
  const overlay = new Command("overlay").description("write down what a town asks, and see what it does to a job");
  overlay
    .command("new")
    .description("answer a few questions and get a commented overlay file")
    .argument("<file>", "overlay file to write")
    .option("--json", "what was written as JSON on standard output")
    .action(async (file: string, options) => {
      const { newOverlay } = await import("./new-overlay.js");
      process.exitCode = await newOverlay(file, { input: process.stdin, output: options.json ? process.stderr : process.stdout }, options);
    });
  overlay
    .command("check")
    .description("say what does not hold in an overlay and what is old in it")
    .argument("<file>", "overlay file, YAML")
    .option("--date <YYYY-MM-DD>", "day of the packet, today when left out")
    .option("--json", "issues and cautions as JSON on standard output")
    .action(async (file: string, options) => {
      const { checkOverlay } = await import("./check-overlay.js");
      process.exitCode = await checkOverlay(file, options);
    });
  overlay
    .command("explain")
    .description("every field of an overlay and what it extends, with the file and line it came from")
    .argument("<file>", "overlay file, YAML")
    .option("--json", "the fields as JSON on standard output")
    .action(async (file: string, options) => {
      const { explainOverlay } = await import("./explain-overlay.js");
      process.exitCode = await explainOverlay(file, options);
    });
  overlay
    .command("diff")
    .description("what differs between two overlays, and with --job what that changes for a job")
    .argument("<a>", "overlay file, YAML")
    .argument("<b>", "overlay file, YAML")
    .option("--job <file>", "job file, YAML")
    .option("--date <YYYY-MM-DD>", "day of the packet, today when left out")
    .option("--json", "the differences as JSON on standard output")
    .action(async (a: string, b: string, options) => {
      const { diffOverlays } = await import("./diff-overlays.js");
      process.exitCode = await diffOverlays(a, b, options);
    });
  return overlay;
}

import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { figure, row, timed } from "./measure.mjs";

/** How long a fresh process takes to have the engine, beside an empty one, and how large it is as one file for a browser. */
export async function loading(root) {
  const main = join(root, "packages/engine/dist/index.js");
  const run = (code) => () => {
    const { status, stderr } = spawnSync(process.execPath, ["--input-type=module", "-e", code], { encoding: "utf8" });
    if (status !== 0) throw new Error(stderr);
  };
  const empty = row("an empty process", await timed(9, run(""), 1));
  const whole = row("a process that imports the engine", await timed(9, run(`await import(${JSON.stringify(main)})`), 1));
  const { build } = createRequire(join(root, "package.json"))("esbuild");
  const made = await build({ entryPoints: [main], bundle: true, minify: true, format: "esm", platform: "browser", write: false, logLevel: "error" });
  const [{ contents }] = made.outputFiles;
  return [
    empty,
    whole,
    figure("import of the engine alone (difference of medians)", whole.median - empty.median, "ms"),
    figure("engine with all it depends on, one minified file", contents.length / 1024, "KB"),
    figure("the same, gzipped", gzipSync(contents).length / 1024, "KB"),
  ];
}

import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "branchwork-guides-"));
afterAll(() => rmSync(scratch, { recursive: true }));

/** A reader's folder: the fixtures beside the reader, the command on the path, the packages installed. */
function readersFolder(name: string): string {
  const folder = join(scratch, name);
  const bin = join(folder, "bin");
  mkdirSync(bin, { recursive: true });
  for (const part of ["jobs", "overlays", "prices"]) cpSync(join(root, "fixtures", part), join(folder, part), { recursive: true });
  cpSync(join(root, "fixtures"), join(folder, "fixtures"), { recursive: true });
  symlinkSync(join(root, "apps/packet/node_modules"), join(folder, "node_modules"), "junction");
  writeFileSync(join(bin, "branchwork"), `#!/bin/sh\nexec "${process.execPath}" "${join(root, "apps/packet/dist/main.js")}" "$@"\n`);
  chmodSync(join(bin, "branchwork"), 0o755);
  return folder;
}

const runners: Record<string, (code: string) => readonly [string, ...string[]]> = {
  sh: (code) => ["sh", "-e", "-c", code],
  js: (code) => [process.execPath, "--input-type=module", "--eval", code],
  py: (code) => ["python3", "-c", code],
};
const lacks = (program: string) => spawnSync(program, ["-c", ""]).error !== undefined;
const missing = new Set([...(lacks("sh") ? ["sh"] : []), ...(lacks("python3") || lacks("sh") ? ["py"] : [])]);

interface Block {
  readonly language: string;
  /** `run`, `run fails` for a command that ends with findings or bad input, or `write <file>`. */
  readonly how: string;
  readonly code: string;
}

const blocksOf = (text: string): Block[] =>
  [...text.matchAll(/^```(\w+) (run(?: fails)?|write \S+)\n([\s\S]*?)^```$/gm)].map(([, language, how, code]) => ({
    language: language!,
    how: how!,
    code: code!,
  }));
const said = (code: string) => [...code.matchAll(/(?:#|\/\/) → (.*)$/gm)].map(([, line]) => line!);

const guides = [
  ...readdirSync(join(root, "docs/guides"))
    .filter((name) => name.endsWith(".md"))
    .map((name) => `docs/guides/${name}`),
  "README.md",
].filter((path) => blocksOf(readFileSync(join(root, path), "utf8")).length > 0);

describe("the guides", () => {
  it("have examples that run, and the command is built", () => {
    for (const guide of ["householder", "electrician", "importer", "overlay-author"]) expect(guides).toContain(`docs/guides/${guide}.md`);
    expect(existsSync(join(root, "apps/packet/dist/main.js"))).toBe(true);
  });
  describe.each(guides)("%s", (path) => {
    const folder = readersFolder(path.replaceAll("/", "-"));
    it.each(blocksOf(readFileSync(join(root, path), "utf8")).map((block) => [block.code.split("\n")[0]!, block] as const))(
      "%s",
      (_first, { language, how, code }) => {
        if (how.startsWith("write ")) {
          writeFileSync(join(folder, how.slice("write ".length)), code);
          return;
        }
        const runner = runners[language];
        if (!runner) throw new Error(`nothing runs ${language}`);
        if (missing.has(language)) return;
        const [program, ...args] = runner(code);
        const { status, stdout, stderr } = spawnSync(program, args, {
          cwd: folder,
          encoding: "utf8",
          env: { ...process.env, NO_COLOR: "1", PATH: `${join(folder, "bin")}${delimiter}${process.env.PATH}` },
        });
        const output = stdout + stderr;
        expect(said(code).length, "an example says what it prints").toBeGreaterThan(0);
        if (language === "sh") for (const line of said(code)) expect(output).toContain(line);
        else
          expect(
            output
              .trimEnd()
              .split("\n")
              .map((line, at) => (language === "py" && line.startsWith(said(code)[at] ?? "\0") ? said(code)[at] : line)),
          ).toEqual(said(code));
        if (how === "run fails") expect([1, 2], output).toContain(status);
        else expect(status, output).toBe(0);
      },
    );
  });
});

describe("the README and the command say the same", () => {
  const readme = readFileSync(join(root, "README.md"), "utf8");
  const page = readFileSync(join(root, "docs/man/branchwork.1"), "utf8");
  const commands = [...page.matchAll(/^\.SS ([a-z]+(?:\\-[a-z]+)?(?: (?:new|check|explain|diff)\b)?)/gm)].map(([, name]) => name!.replaceAll("\\-", "-"));
  it("the manual has the commands", () => expect(commands).toEqual(expect.arrayContaining(["check", "build", "batch-merge", "overlay explain", "calc"])));
  it.each(commands)("%s is in the README", (name) => expect(readme).toMatch(new RegExp(`^\\| \`${name}[ \`]`, "m")));
});

describe("what is written from the program", () => {
  it("fields of the job file, checks, calculations and manual page are up to date", () => {
    const { status, stderr } = spawnSync(process.execPath, [join(root, "scripts/docs-site.mjs"), "--verify"], { encoding: "utf8" });
    expect(stderr).toBe("");
    expect(status).toBe(0);
  });
});

describe("completion", () => {
  const completion = (shell: string) => spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), "completion", shell], { encoding: "utf8" }).stdout;
  const inBash = (...words: string[]) => {
    const quoted = words.map((word) => `'${word}'`).join(" ");
    const script = `${completion("bash")}\nCOMP_WORDS=(branchwork ${quoted}); COMP_CWORD=${words.length}; _branchwork 2>/dev/null; printf '%s\\n' "\${COMPREPLY[@]}"`;
    return spawnSync("bash", ["-c", script], { encoding: "utf8", cwd: join(root, "fixtures") })
      .stdout.trim()
      .split("\n")
      .sort();
  };
  it.skipIf(lacks("bash"))("bash: commands, their commands, options, choices, files", () => {
    expect(inBash("che")).toEqual(["check"]);
    expect(inBash("overlay", "")).toEqual(["check", "diff", "explain", "new"]);
    expect(inBash("check", "--ov")).toEqual(["--overlay"]);
    expect(inBash("check", "--edition", "20")).toEqual(["2017", "2020", "2023", "2026"]);
    expect(inBash("overlay", "diff", "--job", "jobs/rv-5")).toEqual(["jobs/rv-50-carport.yaml"]);
  });
  it.each(["zsh", "fish"].map((shell) => [shell, lacks(shell)] as const))("%s reads its script, where it is on this machine", (shell, absent) => {
    const script = completion(shell);
    expect(script).toContain("batch-merge");
    if (absent) return;
    const file = join(scratch, `completion.${shell}`);
    writeFileSync(file, script);
    const { status, stderr } = spawnSync(shell, ["-n", file], { encoding: "utf8" });
    expect(stderr).toBe("");
    expect(status).toBe(0);
  });
  it("a shell that is not one: exit 2", () =>
    expect(spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), "completion", "tcsh"]).status).toBe(2));
});

describe("help", () => {
  const help = (...words: string[]) => spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), ...words, "--help"], { encoding: "utf8" }).stdout;
  const names = (text: string) =>
    [...text.matchAll(/^ {2}([a-z][a-z-]*)(?: |$)/gm)].map(([, name]) => name!).filter((name) => !["branchwork", "help"].includes(name));
  it("every command stands under a heading and shows a call of it", () => {
    const overview = help();
    const commands = names(overview.slice(overview.indexOf("\nUsage:"), overview.indexOf("\nExit codes:")));
    expect(commands).toEqual(expect.arrayContaining(["check", "build", "overlay", "completion"]));
    expect(overview).not.toMatch(/^Commands:/m);
    for (const name of commands) expect(help(name), name).toMatch(new RegExp(`^Examples?:\\n[^]*branchwork ${name}\\b`, "m"));
  });
});

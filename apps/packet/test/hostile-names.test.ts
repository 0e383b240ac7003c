import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { readAttachments } from "../src/print/attachments.js";
import { jsonLine } from "../src/terminal-text.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const good = readFileSync(join(root, "fixtures/jobs/rv-30-small-service.yaml"), "utf8");
const top = mkdtempSync(join(tmpdir(), "branchwork-names-"));
afterAll(() => rmSync(top, { recursive: true, force: true }));
let scratch: string;
let count = 0;
beforeEach(() => {
  count += 1;
  scratch = join(top, `${count}`);
  mkdirSync(scratch);
});
function branchwork(args: readonly string[], input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), ...args], { cwd: scratch, input, encoding: "utf8" });
  return { status, stdout, stderr };
}

/** What a terminal obeys, or what turns the direction of writing; line ends apart. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const OBEYED = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

/** Names that an archive from a stranger may bring. */
const NAMES = [
  "a\u001b[2J\u001b]0;owned\u0007.yaml",
  "a\u009b31m.yaml",
  "first\nbad input  forged.yaml",
  "invoice\u202elmay.fdp.yaml",
  "\u2066left\u2069.yaml",
  "=HYPERLINK(1).yaml",
  "-rf.yaml",
  "--help.yaml",
  "$(touch owned).yaml",
  "`touch owned`;&|.yaml",
  "packet.json",
  "design.json",
  "con.yaml",
  "..\\..\\up.yaml",
  "%2e%2e%2fup.yaml",
  "ends in a dot..yaml",
  "<img src=x onerror=alert(1)>.yaml",
  `${"x".repeat(240)}.yaml`,
];

/** Those of which a packet is made. */
const CARRIED = NAMES.filter((name) => !/[\p{Cc}\\]|x{200}/u.test(name));

describe.runIf(process.platform !== "win32")("a hostile name of a job file", () => {
  it.each(CARRIED.map((name) => [JSON.stringify(name).slice(0, 60), name]))(
    "%s: what the packet carries has plain names, and open gives it back whole",
    (_shown, name) => {
      mkdirSync(join(scratch, "in"));
      writeFileSync(join(scratch, "in", name), good);
      const { status, stderr } = branchwork(["build", `in/${name}`, "--out", "out", "--format", "pdf", "--date", "2026-11-25"]);
      expect(stderr).not.toMatch(OBEYED);
      expect(status).toBe(0);
      const [pdf, ...others] = readdirSync(join(scratch, "out"));
      expect(others).toEqual([]);
      const carried = readAttachments(readFileSync(join(scratch, "out", pdf!)));
      for (const { name: inside } of carried) expect(inside).toMatch(/^[A-Za-z0-9][A-Za-z0-9._-]*$/);
      expect(new Set(carried.map((one) => one.name)).size).toBe(carried.length);
      const opened = branchwork(["open", join("out", pdf!), "--out", "back"]);
      expect(opened.status).toBe(0);
      expect(opened.stdout).not.toMatch(OBEYED);
      const [back] = readdirSync(join(scratch, "back"));
      expect(readFileSync(join(scratch, "back", back!), "utf8")).toBe(good);
      expect(readdirSync(scratch).sort()).toEqual(["back", "in", "out"]);
    },
  );

  it.each(NAMES.map((name) => [JSON.stringify(name).slice(0, 60), name]))("%s: told as it is, without what a terminal obeys", (_shown, name) => {
    writeFileSync(join(scratch, name), "format: nothing\n");
    for (const args of [
      ["check", `./${name}`],
      ["build", `./${name}`, "--out", "out"],
      ["batch", ".", "--out", "out"],
    ]) {
      const { status, stderr } = branchwork(args);
      if (args[0] !== "batch" || name.endsWith(".yaml")) expect([args[0], status]).toEqual([args[0], 2]);
      expect(stderr).not.toMatch(OBEYED);
      expect(stderr).not.toMatch(/^bad input {2}forged/m);
    }
  });

  it("too long for what is written beside it: that job's bad input in a batch, however many they are, and the others are made", () => {
    for (let n = 1; n <= 6; n += 1) writeFileSync(join(scratch, `${n}${"x".repeat(220)}.yaml`), good);
    writeFileSync(join(scratch, "z.yaml"), good);
    const { status, stdout } = branchwork(["batch", ".", "--out", "out", "--format", "html", "--json"]);
    expect([status, JSON.parse(stdout).counts]).toEqual([2, { ready: 1, findings: 0, "bad-input": 6, failed: 0 }]);
  });

  it("of overlay and price book: two of one name are carried apart", () => {
    const town = readFileSync(join(root, "fixtures/overlays/tamarack-hollow.yaml"), "utf8");
    mkdirSync(join(scratch, "town"));
    mkdirSync(join(scratch, "prices"));
    writeFileSync(join(scratch, "a[2J.yaml"), good);
    writeFileSync(join(scratch, "town/a\u001b[2J.yaml"), town);
    const prices = readdirSync(join(root, "fixtures/prices")).find((file) => file.endsWith(".yaml"))!;
    writeFileSync(join(scratch, "prices/a\u001b[2J.yaml"), readFileSync(join(root, "fixtures/prices", prices)));
    const args = ["build", "a[2J.yaml", "--overlay", "town/a\u001b[2J.yaml", "--prices", "prices/a\u001b[2J.yaml", "--set", "owner", "--format", "pdf"];
    const { status, stderr } = branchwork([...args, "--out", "out"]);
    expect([status, stderr.replace(/^running as root.*\n/, "")]).toEqual([0, ""]);
    const [pdf] = readdirSync(join(scratch, "out"));
    const names = readAttachments(readFileSync(join(scratch, "out", pdf!))).map(({ name }) => name);
    expect(names).toEqual(["a-2J.yaml", "design.json", "overlay-a-2J.yaml", "packet.json", "prices-a-2J.yaml"]);
  });
});

describe("calc", () => {
  const drop = { current: 40, volts: 240, segments: [{ size: "6", material: "copper", feet: 120 }], method: "K", edition: "2023" };
  const TEXTS = ["\u001b[2J", "a\u009b31m", "a\nline 9: forged", "\u202eabc", "\u2028", "=1+1", '"},{"line":9', "\u0000"];
  it.each(TEXTS.map((text) => [jsonLine(text), text]))("an id of %s comes back as given, on one line, in escapes", (_shown, text) => {
    const { status, stdout } = branchwork(["calc", "voltage-drop"], JSON.stringify({ ...drop, id: text }));
    expect(stdout).not.toMatch(OBEYED);
    if (status === 2) return; // no id
    expect(status).toBe(0);
    expect(stdout.trimEnd().split("\n")).toHaveLength(1);
    expect(JSON.parse(stdout).result.percent.id).toBe(text);
  });
  it.each(TEXTS.map((text) => [jsonLine(text), text]))("a field, a value and a calculation called %s are told in one line each", (_shown, text) => {
    const wrong = branchwork(["calc", "voltage-drop"], JSON.stringify({ ...drop, [`x${text}`]: 1, method: text }));
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).not.toMatch(OBEYED);
    expect(wrong.stderr).not.toMatch(/^line 9/m);
    if (text.includes("\u0000")) return; // no argument holds one
    const unknown = branchwork(["calc", `x${text}`], "{}");
    expect(unknown.status).toBe(2);
    expect(unknown.stderr).not.toMatch(OBEYED);
    expect(unknown.stderr.trimEnd().split("\n")).toHaveLength(1);
  });
});

describe("materials --csv", () => {
  const FORMULAS = ["=HYPERLINK(1)", "+1+1", "-2+3", "@SUM(1)", "'=1", "|calc", "\uff1d1+1", 'a"b,c', "a;b"];
  it.each(FORMULAS)("a name of %s is text in every cell, and adds no cell and no line", (text) => {
    const named = (name: string) =>
      good.replace("RV outlet at garage", name).replace("Down the outside wall, place", `${name}, place`).replace("Down the outside wall,", `${name},`);
    const csv = (name: string) => {
      writeFileSync(join(scratch, "job.yaml"), named(JSON.stringify(name)));
      const { status, stdout } = branchwork(["materials", "job.yaml", "--csv"]);
      expect([0, 1]).toContain(status);
      return stdout;
    };
    const rows = (source: string) =>
      source
        .trimEnd()
        .split("\r\n")
        .map((line) => [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? ""));
    const [plain, hostile] = [rows(csv("plain")), rows(csv(text))];
    expect(hostile.map((row) => row.length)).toEqual(plain.map((row) => row.length));
    for (const cell of hostile.flat()) if (!/^-?\d+(\.\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[\s]*[=+\-@|\uff1d\uff0b\uff0d\uff20]/u);
  });
});

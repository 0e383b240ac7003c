import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "branchwork-hostile-"));
const good = readFileSync(join(root, "fixtures/jobs/rv-50-carport.yaml"), "utf8");
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** With a heap too small for what is attacked with, and a time it must end in. */
function branchwork(args: readonly string[], input = "") {
  const program = ["--max-old-space-size=256", join(root, "apps/packet/dist/main.js"), ...args];
  const { status, signal, stdout, stderr } = spawnSync(process.execPath, program, { cwd: scratch, input, encoding: "utf8", timeout: 30_000 });
  return { status, signal, stdout, stderr };
}

/** Bad input: exit 2, a message of a mend, no stack, nothing written. */
function refused(args: readonly string[], says: RegExp) {
  const before = readdirSync(scratch).sort();
  const { status, signal, stdout, stderr } = branchwork(args);
  expect(signal).toBeNull();
  expect(stderr).toMatch(says);
  expect(stderr).not.toMatch(/\n\s+at /);
  expect(stderr.length).toBeLessThan(20_000);
  expect(stdout).toBe("");
  expect(status).toBe(2);
  expect(readdirSync(scratch).sort()).toEqual(before);
}

beforeAll(() => {
  writeFileSync(join(scratch, "latin.yaml"), Buffer.concat([Buffer.from(good), Buffer.from([0x23, 0xe9, 0xff, 0x0a])]));
  writeFileSync(join(scratch, "utf16.yaml"), Buffer.from(`\ufeff${good}`, "utf16le"));
  writeFileSync(join(scratch, "nul.yaml"), good.replace("owner: ", "owner: \0"));
  writeFileSync(join(scratch, "large.yaml"), "");
  truncateSync(join(scratch, "large.yaml"), 50_000_000);
  writeFileSync(join(scratch, "string.yaml"), `format: branchwork-job/1\nproject: { title: ${"x".repeat(1_500_000)} }\n`);
  writeFileSync(join(scratch, "good.yaml"), good);
  mkdirSync(join(scratch, "folder.yaml"));
  symlinkSync("loop-b.yaml", join(scratch, "loop-a.yaml"));
  symlinkSync("loop-a.yaml", join(scratch, "loop-b.yaml"));
  symlinkSync("/dev/zero", join(scratch, "zero.yaml"));
  execFileSync("mkfifo", [join(scratch, "pipe.yaml")]);
  const town = (more: string) => `format: branchwork-overlay/1\nid: town\nname: Town\nchecked_on: "2026-01-01"\n${more}`;
  for (const [name, parent] of [
    ["up", "../../etc/passwd"],
    ["absolute", "/etc/passwd"],
    ["dots", ".."],
    ["nul", '"a\\0b"'],
    ["device", "/dev/zero"],
  ])
    writeFileSync(join(scratch, `extends-${name}.yaml`), town(`extends: ${parent}\n`));
  writeFileSync(join(scratch, "extends-self.yaml"), town("extends: extends-self\n"));
  writeFileSync(join(scratch, "extends-a.yaml"), town("extends: extends-b\n"));
  writeFileSync(join(scratch, "extends-b.yaml"), town("extends: extends-a\n"));
  writeFileSync(join(scratch, "extends-zero.yaml"), town("extends: zero\n"));
});

describe("a job that is no file of text", () => {
  it.each([
    ["a folder", "folder.yaml", /a folder, not a file/],
    ["a device without end", "/dev/zero", /a pipe or a device/],
    ["a link to one", "zero.yaml", /a pipe or a device/],
    ["a pipe that nobody writes to", "pipe.yaml", /a pipe or a device/],
    ["links in a circle", "loop-a.yaml", /circle/],
    ["a file of 50 MB", "large.yaml", /larger than/],
    ["a string of 1.5 MB", "string.yaml", /longer than/],
    ["not UTF-8", "latin.yaml", /not valid UTF-8/],
    ["UTF-16", "utf16.yaml", /UTF-8|U\+0000|control|no job/],
    ["a NUL in it", "nul.yaml", /nul\.yaml:\d+:\d+: .*U\+0000/],
    ["a name too long", `${"x".repeat(5000)}.yaml`, /cannot be read \(ENAMETOOLONG\)/],
    ["a file under a file", "good.yaml/x", /cannot be read \(ENOTDIR\)/],
    ["nothing", "", /no such file/],
  ])("%s", (_what, file, says) => {
    refused(["build", file, "--out", "out", "--format", "html"], says);
  });
  it.each(readdirSync(join(root, "fixtures/hostile")).filter((name) => name.startsWith("job-") && !name.startsWith("job-read-")))(
    "fixtures/hostile/%s",
    (name) => {
      refused(["check", join(root, "fixtures/hostile", name)], /:\d+:\d+: .*\n {4}mend: /);
    },
  );
});

describe("an overlay's extended file is one of the same folder", () => {
  it.each([
    ["extends-up", /extends/],
    ["extends-absolute", /extends/],
    ["extends-dots", /extends/],
    ["extends-nul", /U\+0000|extends/],
    ["extends-device", /extends/],
    ["extends-self", /circle/],
    ["extends-a", /circle/],
    ["extends-zero", /device/],
  ])("%s", (name, says) => refused(["check", "good.yaml", "--overlay", `${name}.yaml`], says));
  it.each(["/dev/zero", "pipe.yaml", "folder.yaml"])("an overlay that is %s", (file) => refused(["check", "good.yaml", "--overlay", file], /device|folder/));
});

describe("other files that are read", () => {
  it.each([
    [["verify", "/dev/zero"], /device/],
    [["open", "pipe.yaml"], /device/],
    [["open", "good.yaml"], /mend/],
    [["materials", "good.yaml", "--prices", "/dev/zero"], /device/],
    [["readings", "good.yaml", "--file", "/dev/zero"], /device/],
    [["revise", "/dev/zero", "good.yaml", "--out", "out"], /device/],
    [["compare", "/dev/zero", "--from", "2020", "--to", "2023"], /device/],
  ] as const)("%j", (args, says) => refused(args, says));
});

describe("a job's name cannot lead out of the folder it is built in", () => {
  it("a path given as the job gives its last part to the files", () => {
    const { status } = branchwork(["build", "../../../../../../../../../../nowhere.yaml", "--out", "out", "--format", "html"]);
    expect(status).toBe(2);
  });
  it.each(["...yaml", ".hidden.yaml", "-rf.yaml", "a b.yaml", "$(id).yaml"])("odd name %s stays in its folder", (name) => {
    writeFileSync(join(scratch, name), good);
    const out = join(scratch, `out-${name}`);
    const { status } = branchwork(["build", `./${name}`, "--out", out, "--format", "json"]);
    expect([0, 1, 2]).toContain(status);
    expect(readdirSync(scratch).filter((entry) => entry.endsWith(".json"))).toEqual([]);
    rmSync(join(scratch, name));
    rmSync(out, { recursive: true, force: true });
  });
});

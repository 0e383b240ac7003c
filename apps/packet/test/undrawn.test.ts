import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "branchwork-undrawn-"));
const good = readFileSync(join(root, "fixtures/jobs/rv-30-small-service.yaml"), "utf8");
const titled = (title: string) => good.replace(/^( {2}title: ).*$/m, `$1${title}`);
const branchwork = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), ...args], { cwd: scratch, encoding: "utf8" });
  return { status, stdout, stderr };
};
const build = (name: string, ...more: string[]) => branchwork("build", name, "--out", `out-${name}`, "--format", "pdf", "--date", "2026-11-25", ...more);

beforeAll(() => {
  mkdirSync(join(scratch, "jobs"));
  // An eye of Horus and a die stand for letters that the bundled browser's machine has no font for.
  writeFileSync(join(scratch, "jobs/odd.yaml"), titled('"Outlet \\U00013080"  # \u{13081} in a remark is no matter'));
  writeFileSync(join(scratch, "jobs/good.yaml"), good);
  for (const [name, title] of [
    ["odd", '"Outlet \\U00013080"  # \u{13081} in a remark is no matter'],
    ["cyrillic", "Розетка у гаража"],
    ["hebrew", "דנה לוי 12 RV outlet"],
    ["accents", '"Łódź, Çeşme, Ōtaki: ½ in. × 3, 4 Ω"'],
  ] as const)
    writeFileSync(join(scratch, `${name}.yaml`), titled(title));
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe("a character that no font draws", () => {
  it("is bad input, told by file, line, column and field, with the mend; nothing is written", () => {
    const { status, stdout, stderr } = build("odd.yaml", "--set", "field,owner");
    expect(stderr).toMatch(/^odd\.yaml:\d+:10: project\.title: no font here draws "\u{13080}" \(U\+13080\).*\n {4}mend: write it in letters/mu);
    expect(stderr).not.toContain("U+13081");
    expect([status, stdout]).toEqual([2, ""]);
    expect(readdirSync(scratch)).not.toContain("out-odd.yaml");
  });
  it("is that job's bad input in a batch, and the others are made", () => {
    const { status, stdout } = branchwork("batch", "jobs", "--out", "packets", "--date", "2026-11-25", "--json");
    expect(JSON.parse(stdout).counts).toEqual({ ready: 1, findings: 0, "bad-input": 1, failed: 0 });
    expect(status).toBe(2);
    expect(readFileSync(join(scratch, "packets/report.jsonl"), "utf8")).toMatch(/"says":\["odd\.yaml:\d+:10: project\.title: no font here draws/);
  });
  it("in an overlay is told by the overlay's place", () => {
    writeFileSync(join(scratch, "town.yaml"), 'format: branchwork-overlay/1\nid: town\nname: "Town \\U00013080"\nchecked_on: "2026-01-01"\n');
    const { status, stderr } = branchwork("build", "jobs/good.yaml", "--overlay", "town.yaml", "--out", "out-town", "--format", "pdf");
    expect(stderr).toMatch(/^town\.yaml:3:7: name: no font here draws/m);
    expect(status).toBe(2);
  });
});

describe("letters beyond the packet's own faces", () => {
  it.each(["cyrillic", "accents", "hebrew"])("%s: the packet is made", (name) => {
    const { status, stderr } = build(`${name}.yaml`);
    expect(stderr).not.toMatch(/no font|lack the text/);
    expect(status).toBe(0);
  });
});

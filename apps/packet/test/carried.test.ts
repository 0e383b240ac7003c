import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { attachFiles } from "../src/print/attach.js";
import { readAttachments } from "../src/print/attachments.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "branchwork-carried-"));
const job = join(root, "fixtures/jobs/rv-50-carport.yaml");
const town = join(root, "fixtures/overlays/tamarack-hollow.yaml");
const packet = join(scratch, "rv-50-carport.pdf");
const branchwork = (...args: string[]) => spawnSync(process.execPath, [join(root, "apps/packet/dist/main.js"), ...args], { cwd: scratch, encoding: "utf8" });
const verified = (file: string) => {
  const run = branchwork("verify", file, "--json");
  return { status: run.status, result: JSON.parse(run.stdout) };
};
/** The packet with one run of bytes put in place of another of the same length. */
function altered(name: string, from: string, to: string): string {
  const bytes = readFileSync(packet);
  const at = bytes.indexOf(from, 0, "latin1");
  if (at < 0 || from.length !== to.length) throw new Error(`cannot alter ${from}`);
  bytes.write(to, at, "latin1");
  const file = join(scratch, name);
  writeFileSync(file, bytes);
  return file;
}

/** The packet's pages with its files put in anew, one of them with other words. */
function carrying(name: string, from: string, to: string): string {
  const bytes = readFileSync(packet);
  const files = readAttachments(bytes);
  const manifest = JSON.parse(Buffer.from(files.find((f) => f.name === "packet.json")!.bytes).toString()) as { pages: { bytes: number } };
  const other = files.map((f) => {
    const text = Buffer.from(f.bytes).toString();
    if (f.name === name && !text.includes(from)) throw new Error(`${name} holds no ${from}`);
    return f.name === name ? { ...f, bytes: Buffer.from(text.replace(from, to)) } : f;
  });
  const file = join(scratch, `other-${name}.pdf`);
  writeFileSync(file, attachFiles(bytes.subarray(0, manifest.pages.bytes), other, { date: new Date("2026-11-25T00:00:00Z") }));
  return file;
}

beforeAll(() => {
  const { status, stderr } = branchwork("build", job, "--overlay", town, "--out", scratch, "--format", "pdf", "--date", "2026-11-25");
  if (status !== 0) throw new Error(stderr);
}, 60_000);
afterAll(() => rmSync(scratch, { recursive: true }));

describe("verify", () => {
  it("a packet as built: pages intact, every number holds", () => {
    const { status, result } = verified(packet);
    expect(result).toMatchObject({ pagesIntact: true, numbersHold: true, sheetsHold: true, changed: [] });
    expect(status).toBe(0);
  });
  it("a carried file altered in place fails its own checksum: exit 2", () => {
    const { status, stderr } = branchwork("verify", altered("number.pdf", "length: 24 ft", "length: 74 ft"));
    expect(status).toBe(2);
    expect(stderr).toContain("mend:");
  });
  it("a number altered in the design it carries is named with what it was and is", () => {
    const { status, result } = verified(carrying("design.json", '"value":"12000"', '"value":"11000"'));
    expect(result.numbersHold).toBe(false);
    expect(result.changed).toContainEqual(expect.objectContaining({ printed: '"11000"', now: '"12000"' }));
    expect(status).toBe(1);
  });
  it("another length in the job it carries brings other numbers", () => {
    const { result } = verified(carrying("rv-50-carport.yaml", "length: 24 ft", "length: 74 ft"));
    expect(result.numbersHold).toBe(false);
    expect(result.pagesIntact).toBe(true);
  });
  it("a byte of the pages altered", () => {
    const { status, result } = verified(altered("pages.pdf", "/Type /Page", "/Type /Pagf"));
    expect(result.pagesIntact).toBe(false);
    expect(status).toBe(1);
  });
  it("bytes put after it", () => {
    const file = join(scratch, "longer.pdf");
    writeFileSync(file, Buffer.concat([readFileSync(packet), Buffer.from("\n% more\nstartxref\n0\n%%EOF\n")]));
    expect(branchwork("verify", file).status).not.toBe(0);
  });
  it.each([
    ["not a PDF", Buffer.from("hello")],
    ["an empty file", Buffer.alloc(0)],
  ])("%s: one message, exit 2", (_, bytes) => {
    const file = join(scratch, "strange.pdf");
    writeFileSync(file, bytes);
    const { status, stderr } = branchwork("verify", file);
    expect(status).toBe(2);
    expect(stderr).toContain("mend:");
  });
});

describe("the sets", () => {
  const prices = join(root, "fixtures/prices/demo.yaml");
  it("one file each, and each is verified by itself, the owner's with the prices it carries", () => {
    const out = join(scratch, "sets");
    const built = branchwork("build", job, "--set", "owner,submittal,field", "--prices", prices, "--out", out, "--format", "pdf", "--date", "2026-11-25");
    expect(built.status).toBe(0);
    for (const [name, set] of [
      ["rv-50-carport.pdf", "submittal"],
      ["rv-50-carport-field.pdf", "field"],
      ["rv-50-carport-owner.pdf", "owner"],
    ] as const) {
      const carried = readAttachments(readFileSync(join(out, name)));
      expect(JSON.parse(Buffer.from(carried.find((f) => f.name === "packet.json")!.bytes).toString())).toMatchObject({ set });
      expect(Buffer.from(carried.find((f) => f.name === "prices-demo.yaml")!.bytes)).toEqual(readFileSync(prices));
      expect(verified(join(out, name))).toMatchObject({ status: 0, result: { pagesIntact: true, numbersHold: true, sheetsHold: true } });
    }
  }, 60_000);
  it("a set there is none of: exit 2, with those there are", () => {
    const { status, stderr } = branchwork("build", job, "--set", "inspector", "--out", join(scratch, "none"));
    expect(status).toBe(2);
    expect(stderr).toContain("submittal,field,owner");
  });
});

describe("open", () => {
  it("gives the job and the overlay back byte for byte", () => {
    const out = join(scratch, "given-back");
    expect(branchwork("open", packet, "--out", out).status).toBe(0);
    expect(readFileSync(join(out, "rv-50-carport.yaml"))).toEqual(readFileSync(job));
    expect(readFileSync(join(out, "overlay-tamarack-hollow.yaml"))).toEqual(readFileSync(town));
  });
});

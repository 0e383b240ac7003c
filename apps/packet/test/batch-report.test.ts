import { spawn } from "node:child_process";
import { once } from "node:events";
import { appendFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { printProgress, progressOn } from "../src/batch/progress.js";
import { GrowingReport, printReport, readReport, replaceFile } from "../src/batch/report-file.js";
import { countRows, exitOf, OUTCOMES, type Outcome, type Row } from "../src/batch/row.js";
import { lockRun } from "../src/batch/run-lock.js";
import { escapeHtml, printSummary } from "../src/batch/summary.js";
import { WriteGate } from "../src/batch/write-gate.js";

const scratch = mkdtempSync(join(tmpdir(), "branchwork-report-"));
afterAll(() => rmSync(scratch, { recursive: true }));
const row = (job: string, outcome: Outcome = "ready", more: Partial<Row> = {}): Row => ({
  format: "branchwork-batch-row/1",
  job,
  digest: "d",
  outcome,
  folder: `packets/${job}`,
  files: [],
  says: [],
  ...more,
});

describe("a report", () => {
  it("grows row by row, and a line torn by a kill costs that row alone", async () => {
    const path = join(scratch, "grow.jsonl");
    const report = await GrowingReport.open(path, [row("a")]);
    await Promise.all(["b", "c", "d"].map((job) => report.append(row(job))));
    await report.close();
    appendFileSync(path, JSON.stringify(row("e")).slice(0, 40));
    const read = await readReport(path);
    expect([...(read?.rows.keys() ?? [])]).toEqual(["a", "b", "c", "d"]);
    expect(read).toMatchObject({ torn: 1, end: undefined });
    await (await GrowingReport.open(path, read?.rows.values() ?? [])).close();
    expect(await readReport(path)).toMatchObject({ torn: 0 });
  });
  it("has no end once a row follows it, and the later of two rows of a job stands", async () => {
    const path = join(scratch, "end.jsonl");
    const end = { format: "branchwork-batch-end/1", jobs: 1, done: 1 } as const;
    writeFileSync(path, printReport([row("a", "failed")], end));
    expect((await readReport(path))?.end).toEqual(end);
    appendFileSync(path, printReport([row("a", "ready")]));
    const read = await readReport(path);
    expect(read?.end).toBeUndefined();
    expect(read?.rows.get("a")?.outcome).toBe("ready");
  });
  it.each([
    "null",
    "7",
    "[]",
    '{"format":"branchwork-batch-row/1"}',
    '{"format":"branchwork-batch-row/1","job":"a","digest":"d","outcome":"splendid","folder":"a","files":[],"says":[]}',
  ])("does not take %s for a row", async (line) => {
    const path = join(scratch, "alien.jsonl");
    writeFileSync(path, `${line}\n`);
    expect(await readReport(path)).toMatchObject({ torn: 1, rows: new Map() });
  });
  it("is there or not: undefined", async () => expect(await readReport(join(scratch, "nowhere.jsonl"))).toBeUndefined());
  it("is replaced whole, and what a killed replacement left is cleared away", async () => {
    const path = join(scratch, "whole.txt");
    writeFileSync(join(scratch, ".whole.txt.0123456789ab.new"), "half");
    await replaceFile(path, "one");
    await replaceFile(path, "two");
    expect(readFileSync(path, "utf8")).toBe("two");
    expect(readdirSync(scratch).filter((name) => name.includes("whole"))).toEqual(["whole.txt"]);
  });
});

describe("the exit code", () => {
  it("is that of the worst outcome", () => {
    for (const [worst, outcome] of OUTCOMES.entries())
      expect(exitOf(countRows(OUTCOMES.slice(0, worst + 1).map((one) => row(one, one))))).toBe(OUTCOMES.indexOf(outcome));
    expect(exitOf(countRows([row("a"), row("b", "failed"), row("c", "findings")]))).toBe(3);
  });
});

describe("the summary", () => {
  const sly = `<script>alert(1)</script>"'\`&\u202egnp.exe\u0007`;
  it("escapes every string a user can set", () => {
    const page = printSummary([row(sly, "failed", { says: [sly], folder: `packets/${sly}`, files: [{ name: `${sly}.pdf`, bytes: 1, sha256: "s" }] })], {
      date: sly,
      left: 3,
    });
    for (const raw of ["<script", "alert(1)</", "\u202e", "\u0007"]) expect(page).not.toContain(raw);
    expect(page.match(/<a [^>]*>/g)).toEqual([expect.stringMatching(/^<a href="\.\/packets\/[^"<>]*" aria-label="[^"<>]*">$/)]);
    expect(page).toContain("Content-Security-Policy");
    expect(escapeHtml(`<a href="x" onclick='y'>&`)).toBe("&#60;a href=&#34;x&#34; onclick=&#39;y&#39;&#62;&#38;");
  });
  it("cannot be led to a script by a folder's name", () =>
    expect(
      printSummary([row("a", "ready", { folder: "javascript:alert(1)", files: [{ name: "a.pdf", bytes: 1, sha256: "s" }] })], { date: "d", left: 0 }),
    ).toContain('href="./javascript%3Aalert(1)/a.pdf"'));
  it("names a packet's files without the job's name again, and places in the job's own file by line and column", () => {
    const files = ["07-a.pdf", "07-a-field.pdf", "other.pdf"].map((name) => ({ name, bytes: 1, sha256: "s" }));
    const says = ["street/07-a.yaml:3:9: serves: is missing; mend: add it", "town.yaml:1:1: is none"];
    const page = printSummary([row("street/07-a.yaml", "findings", { folder: "packets/street/07-a", files, says })], { date: "d", left: 0 });
    expect([...page.matchAll(/aria-label="([^"]*)">([^<]*)</g)].map(([, whole, short]) => [whole, short])).toEqual([
      ["07-a.pdf", "pdf"],
      ["07-a-field.pdf", "field.pdf"],
      ["other.pdf", "other.pdf"],
    ]);
    expect(page).toContain("<li>line 3, column 9: serves: is missing; mend: add it</li><li>town.yaml:1:1: is none</li>");
  });
  it("puts what needs a person first and says what is left", () => {
    const page = printSummary([row("good"), row("bad", "failed")], { date: "2026-11-25", left: 2 });
    expect(page.indexOf("bad</")).toBeGreaterThan(0);
    expect(page.search(/<li>bad/)).toBeLessThan(page.search(/<li>good/));
    expect(page).toContain("2 jobs have no row");
  });
});

describe("progress", () => {
  const counts = { ready: 1, findings: 0, "bad-input": 0, failed: 0 };
  const stream = (isTTY: boolean) => {
    const out: string[] = [];
    return { out, stream: { isTTY, columns: 200, write: (text: string) => out.push(text) } as unknown as NodeJS.WriteStream };
  };
  it("gives rate and time left", () =>
    expect(printProgress({ made: 10, toMake: 100, rate: 2, counts })).toBe("10/100  2.0/s, 45 s left  ready 1, findings 0, bad input 0, failed 0"));
  it("is silent in a pipe", () => {
    const pipe = stream(false);
    const progress = progressOn(pipe.stream, 10, () => 0);
    progress.tell(1, counts);
    progress.end();
    expect(pipe.out).toEqual([]);
  });
  it("tells on a terminal, not more than five times a second", () => {
    const terminal = stream(true);
    let time = 1000;
    const progress = progressOn(terminal.stream, 1000, () => time);
    for (let made = 1; made <= 100; made += 1) {
      time += 10;
      progress.tell(made, counts);
    }
    expect(terminal.out.length).toBeGreaterThan(2);
    expect(terminal.out.length).toBeLessThanOrEqual(6);
    expect(terminal.out[0]).toMatch(/\d+\/1000 .*100\.0\/s/);
  });
});

describe("the write gate", () => {
  it("lets a write that is begun end, and begins none once closed", async () => {
    const gate = new WriteGate();
    let end: () => void = () => undefined;
    const done: string[] = [];
    const first = gate.through(async () => {
      await new Promise<void>((resolve) => {
        end = resolve;
      });
      done.push("first");
    });
    const closed = gate.close().then(() => done.push("closed"));
    void gate.through(async () => done.push("second"));
    end();
    await Promise.all([first, closed]);
    expect(done).toEqual(["first", "closed"]);
  });
  it("gives an error to whoever writes, and closes all the same", async () => {
    const gate = new WriteGate();
    await expect(gate.through(() => Promise.reject(new Error("full")))).rejects.toThrow("full");
    await gate.close();
  });
});

describe("the lock", () => {
  it.runIf(process.platform === "linux")("keeps a second run away while the first lives, and is taken over from a dead one", async () => {
    const path = join(scratch, "lock");
    const other = spawn(process.execPath, ["-e", "setTimeout(() => {}, 60_000)"]);
    const stat = readFileSync(`/proc/${other.pid}/stat`, "utf8");
    const started = stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19];
    writeFileSync(path, JSON.stringify({ pid: other.pid, host: hostname(), started }));
    await expect(lockRun(path)).rejects.toThrow(/another run/);
    other.kill("SIGKILL");
    await once(other, "exit");
    const release = await lockRun(path);
    expect(existsSync(path)).toBe(true);
    await release();
    expect(existsSync(path)).toBe(false);
    writeFileSync(path, '{"pi');
    await (await lockRun(path))();
  });
});

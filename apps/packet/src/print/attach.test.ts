import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { deflateSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Attachment, attachFiles } from "./attach.js";
import { readAttachments } from "./attachments.js";
import { inspectPdf } from "./inspect-pdf.js";
import { ordinaryLimits } from "./pdf-file.js";
import { PdfFormatError } from "./pdf-value.js";
import { openPrinter } from "./printer.js";

const date = new Date("2026-03-04T05:06:07Z");
const run = promisify(execFile);
// Another program's answer is of use only where that program is; any exit but "not there" means it is.
const has = (program: string) =>
  run(program, ["--version"]).then(
    () => true,
    (error) => error.code !== "ENOENT",
  );
const [qpdf, poppler] = await Promise.all([has("qpdf"), has("pdfdetach")]);

const file = (name: string, content: string | Uint8Array): Attachment => ({
  name,
  bytes: new Uint8Array(Buffer.from(content)),
  media: "application/json",
  description: `What was given: ½ of ${name} (all)`,
});
const files = [
  file("job.branchwork.yaml", "service: 200 A\nendstream endobj %%EOF startxref 5 \n"),
  file("design.json", JSON.stringify({ conduit: "½ in" })),
  file("Größe – 1.json", ""),
  file(
    "all bytes",
    Uint8Array.from({ length: 256 }, (_, i) => i),
  ),
];

let printed: Uint8Array;
let dir: string;
beforeAll(async () => {
  dir = await mkdtemp(join(tmpdir(), "branchwork-attach-"));
  const printer = await openPrinter({ warn: () => undefined });
  const html = '<!doctype html><html lang="en"><title>Sheet</title><h1 id="top">Packet</h1><table><tr><th>Circuit<td>1</table><a href="#top">up</a>';
  printed = await printer.print(html, { date, expectText: "Packet" }).finally(() => printer.close());
});
afterAll(() => rm(dir, { recursive: true, force: true }));

describe("attachFiles", () => {
  it("carries the files, gives them back byte for byte in name order, and leaves the PDF's own bytes", () => {
    const carrying = attachFiles(printed, files, { date });
    expect(Buffer.compare(carrying.subarray(0, printed.length), printed)).toBe(0);
    const back = readAttachments(carrying);
    expect(back.map(({ name }) => name)).toEqual(["all bytes", "design.json", "job.branchwork.yaml", "Größe – 1.json"]);
    for (const given of files) expect(back.find(({ name }) => name === given.name)).toEqual(given);
  });

  it("gives the same bytes for the same files and other bytes for others", () => {
    const once = attachFiles(printed, files, { date });
    expect(Buffer.compare(once, attachFiles(printed, files, { date }))).toBe(0);
    expect(Buffer.compare(once, attachFiles(printed, [file("job.branchwork.yaml", "other")], { date }))).not.toBe(0);
  });

  it("leaves pages, tags, outline, links, title and language as they were", () => {
    expect(inspectPdf(attachFiles(printed, files, { date }))).toEqual(inspectPdf(printed));
  });

  it("refuses names that are paths, twice the same, and a PDF that carries files already", () => {
    for (const name of ["", "../job", "a/b", "a\\b", "C:x", ".hidden", "a\nb", "a\u202etxt"])
      expect(() => attachFiles(printed, [file(name, "")], { date }), name).toThrow(RangeError);
    expect(() => attachFiles(printed, [file("a", ""), file("a", "")], { date })).toThrow(RangeError);
    expect(() => attachFiles(attachFiles(printed, files, { date }), files, { date })).toThrow(/already/);
    expect(() => attachFiles(Buffer.from("%PDF-1.4\n"), files, { date })).toThrow(PdfFormatError);
  });

  it.runIf(qpdf)("passes the check of another PDF program, which finds the files too", async () => {
    await writeFile(join(dir, "checked.pdf"), attachFiles(printed, files, { date }));
    const { stdout, stderr } = await run("qpdf", ["--check", join(dir, "checked.pdf")]);
    expect(stdout).toContain("No syntax or stream encoding errors found");
    expect(stderr).toBe("");
    const shown = await run("qpdf", [join(dir, "checked.pdf"), "--show-attachment=all bytes"], { encoding: "buffer" });
    expect(shown.stdout).toEqual(Buffer.from(files[3]?.bytes as Uint8Array));
  });

  it.runIf(poppler)("shows its files to a third", async () => {
    await writeFile(join(dir, "listed.pdf"), attachFiles(printed, files, { date }));
    const { stdout, stderr } = await run("pdfdetach", ["-list", join(dir, "listed.pdf")]);
    expect(stderr).toBe("");
    expect(stdout).toMatch(/^4 embedded files/);
    for (const { name } of files) expect(stdout).toContain(name);
    await run("pdfdetach", ["-savefile", "design.json", "-o", join(dir, "out"), join(dir, "listed.pdf")]);
    expect(await readFile(join(dir, "out"), "utf8")).toBe('{"conduit":"½ in"}');
  });
});

/** A PDF written by hand from its objects (number 1 is the catalog). */
function pdfOf(objects: readonly (string | Buffer)[], trailer = "", tail?: (xref: number) => string): Buffer {
  let body = Buffer.from("%PDF-1.4\n");
  const offsets = objects.map((object, index) => {
    const at = body.length;
    body = Buffer.concat([body, Buffer.from(`${index + 1} 0 obj\n`), Buffer.from(object), Buffer.from("\nendobj\n")]);
    return `${String(at).padStart(10, "0")} 00000 n \n`;
  });
  const end = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${offsets.join("")}trailer\n<</Size ${objects.length + 1} /Root 1 0 R ${trailer}>>\n`;
  return Buffer.concat([body, Buffer.from(`${end}startxref\n${tail ? tail(body.length) : body.length}\n%%EOF\n`)]);
}
/** Three thousand objects in 300 kB, each of them nearly all of it. */
function overlapping(opening: string, closing: string): Buffer {
  const numbers = Array.from({ length: 3000 }, (_, i) => i + 3);
  let body = `%PDF-1.4\n1 0 obj ${catalog} endobj\n`;
  const offsets = [`${"9".padStart(10, "0")} 00000 n \n`, `${String(body.length).padStart(10, "0")} 00000 n \n`];
  body += `2 0 obj <</Kids [${numbers.map((number) => `${number} 0 R`).join(" ")}]>> endobj\n`;
  for (const number of numbers) {
    offsets.push(`${String(body.length).padStart(10, "0")} 00000 n \n`);
    body += `${number} 0 obj ${opening}`;
  }
  body += `${"x".repeat(300_000)}${closing.repeat(numbers.length)}\n${closing === "" ? "0 endobj\n" : ""}`;
  return Buffer.from(`${body}xref\n1 ${offsets.length}\n${offsets.join("")}trailer\n<</Size 3003 /Root 1 0 R>>\nstartxref\n${body.length}\n%%EOF\n`);
}
const streamOf = (dict: string, content: Buffer) =>
  Buffer.concat([Buffer.from(`<<${dict} /Length ${content.length}>>\nstream\n`), content, Buffer.from("\nendstream")]);
const catalog = "<</Names <</EmbeddedFiles 2 0 R>>>>";
const tree = "<</Names [(a) 3 0 R]>>";
const named = (name: string) => `<</F (${name}) /EF <</F 4 0 R>>>>`;

describe("readAttachments", () => {
  it("reads a packed file as other programs write it, in a tree with branches", () => {
    const content = Buffer.from("hello");
    const pdf = pdfOf([
      catalog,
      "<</Kids [5 0 R]>>",
      named("a\\056txt"),
      streamOf("/Filter [/FlateDecode] /Params <</Size 5>>", deflateSync(content)),
      "<</Limits [(a) (a)] /Names [(a) 3 0 R]>>",
    ]);
    expect(readAttachments(pdf)).toEqual([{ name: "a.txt", bytes: new Uint8Array(content), media: "application/octet-stream", description: "" }]);
  });

  it("finds none where there are none", () => {
    expect(readAttachments(printed)).toEqual([]);
  });

  const bomb = deflateSync(Buffer.alloc(80 * 2 ** 20));
  it.each<[string, () => Uint8Array, RegExp]>([
    ["nothing", () => Buffer.alloc(0), /not a PDF/],
    ["another file", () => Buffer.from("PK\u0003\u0004"), /not a PDF/],
    ["a PDF cut off", () => printed.subarray(0, printed.length / 2), /cut off/],
    ["a table in a stream", () => pdfOf([catalog], "", () => "9"), /compressed stream/],
    ["a table elsewhere", () => pdfOf([catalog], "", () => "99999999"), /no object table/],
    ["tables in a circle", () => pdfOf([catalog], "/Prev 47"), /circle|no object table/],
    ["an encrypted PDF", () => pdfOf([catalog], "/Encrypt 1 0 R"), /encrypted/],
    ["no catalog", () => pdfOf(["7"]), /no catalog/],
    ["a catalog that is itself", () => pdfOf(["1 0 R"]), /circle/],
    ["a tree in a circle", () => pdfOf([catalog, "<</Kids [2 0 R]>>"]), /circle/],
    ["a tree that ends in nothing", () => pdfOf([catalog, "<</Names [(a) 9 0 R]>>"]), /entry of its list/],
    ["a name that is a path", () => pdfOf([catalog, tree, named("../../a"), streamOf("", Buffer.from("x"))]), /name that is none/],
    ["two of one name", () => pdfOf([catalog, "<</Names [(a) 3 0 R (b) 3 0 R]>>", named("a"), streamOf("", Buffer.from("x"))]), /two files/],
    ["no file behind the name", () => pdfOf([catalog, tree, named("a"), "null"]), /does not hold it/],
    ["a stream longer than it says", () => pdfOf([catalog, tree, named("a"), "<</Length 1>>\nstream\nabc\nendstream"]), /length of stream/],
    ["a stream as long as itself", () => pdfOf([catalog, tree, named("a"), "<</Length 4 0 R>>\nstream\nabc\nendstream"]), /contains itself/],
    ["a stream of absurd length", () => pdfOf([catalog, tree, named("a"), "<</Length 99999999999>>\nstream\nabc\nendstream"]), /length of stream/],
    ["an unknown packing", () => pdfOf([catalog, tree, named("a"), streamOf("/Filter /LZWDecode", Buffer.from("x"))]), /does not unpack/],
    ["a broken packing", () => pdfOf([catalog, tree, named("a"), streamOf("/Filter /FlateDecode", Buffer.from("xxxx"))]), /packed stream .* damaged/],
    ["a bomb", () => pdfOf([catalog, tree, named("a"), streamOf("/Filter /FlateDecode", bomb)]), /more than this program reads/],
    ["a wrong size", () => pdfOf([catalog, tree, named("a"), streamOf("/Params <</Size 9>>", Buffer.from("x"))]), /should have 9/],
    ["a wrong checksum", () => pdfOf([catalog, tree, named("a"), streamOf("/Params <</CheckSum (0)>>", Buffer.from("x"))]), /checksum/],
    ["arrays without end", () => pdfOf([`<</Names ${"[".repeat(100_000)}`]), /nested too deep/],
    ["a string without end", () => pdfOf(["<</Names (abc"]), /without end/],
    ["too many files", () => pdfOf([catalog, `<</Names [${"(a) 3 0 R ".repeat(101)}]>>`, named("a"), streamOf("", Buffer.from("x"))]), /more than 100 files/],
    ["objects written inside one another's strings", () => overlapping("(", ") endobj "), /too much to read/],
    ["objects written inside one another's comments", () => overlapping("%", ""), /too much to read/],
    ["values without number", () => pdfOf([`<</Names [${"0 ".repeat(2_100_000)}]>>`]), /too much to read/],
  ])("refuses %s and says why", (_what, make, why) => {
    const read = () => readAttachments(make());
    expect(read).toThrow(PdfFormatError);
    expect(read).toThrow(why);
  });

  it("keeps to the size it is told, for the file and for what it unpacks", () => {
    const carrying = attachFiles(printed, files, { date });
    expect(() => readAttachments(carrying, { ...ordinaryLimits, fileBytes: 100 })).toThrow(/at most 100/);
    expect(() => readAttachments(carrying, { ...ordinaryLimits, streamBytes: 300 })).toThrow(/more than 300 bytes/);
  });

  it("meets any damage to one byte with the files or an error of its own, never another", () => {
    const carrying = Buffer.from(attachFiles(printed, files, { date }));
    for (let at = printed.length; at < carrying.length; at += 1)
      for (const byte of [0, 0x20, 0x28, 0x3c, 0xff]) {
        const damaged = Buffer.from(carrying);
        damaged[at] = byte;
        try {
          readAttachments(damaged);
        } catch (error) {
          if (!(error instanceof PdfFormatError)) throw error;
        }
      }
  });
});

import { readFileSync } from "node:fs";
import { deflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { attachFiles } from "../../../packet/src/print/attach.js";
import { readPacketFile } from "./packet-file.js";

const date = new Date("2026-03-04T05:06:07Z");
const root = new URL("../../../../", import.meta.url);
const job = readFileSync(new URL("fixtures/jobs/rv-50-carport.yaml", root), "utf8");
const town = readFileSync(new URL("fixtures/overlays/tamarack-hollow.yaml", root), "utf8");

/** A PDF of one empty page with a classic table, its objects as given. */
function pdfOf(objects: readonly string[], more = ""): Uint8Array {
  let text = "%PDF-1.7\n";
  const places = objects.map((object, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const start = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${places.map((at) => `${String(at).padStart(10, "0")} 00000 n \n`).join("")}`;
  text += `trailer\n<</Size ${objects.length + 1} /Root 1 0 R ${more}>>\nstartxref\n${start}\n%%EOF\n`;
  return Uint8Array.from(text, (char) => char.charCodeAt(0));
}
const PAGE = ["<</Type /Catalog /Pages 2 0 R>>", "<</Type /Pages /Kids [3 0 R] /Count 1>>", "<</Type /Page /Parent 2 0 R /MediaBox [0 0 612 792]>>"] as const;
const file = (name: string, content: string) => ({ name, bytes: new TextEncoder().encode(content), media: "application/yaml", description: "½ of it (all)" });
const manifest = (of: object) => file("packet.json", JSON.stringify({ format: "branchwork-packet/1", ...of }));
const packet = (...files: ReturnType<typeof file>[]) => attachFiles(pdfOf(PAGE), files, { date });
const names = (...pairs: string[]) => [`<</Type /Catalog /Pages 2 0 R /Names <</EmbeddedFiles <</Names [${pairs.join(" ")}]>>>>>>`, PAGE[1], PAGE[2]];
const stream = (content: string, more = "") => `<</Length ${content.length} ${more}>>\nstream\n${content}\nendstream`;

describe("a packet's PDF", () => {
  test("gives back the job and the town's file letter for letter", async () => {
    const pdf = packet(
      file("rv-50-carport.yaml", job),
      file("overlay-tamarack-hollow.yaml", town),
      manifest({ job: "rv-50-carport.yaml", overlay: "overlay-tamarack-hollow.yaml" }),
    );
    expect(await readPacketFile(pdf)).toEqual({ job, overlay: { name: "tamarack-hollow.yaml", text: town } });
  });
  test("without a town's file", async () => {
    expect(await readPacketFile(packet(file("Größe.yaml", job), manifest({ job: "Größe.yaml" })))).toEqual({ job, overlay: null });
  });
  test("words in the job that look like the end of a stream do not end it", async () => {
    const tricky = "a: |\n  endstream endobj startxref 5 %%EOF\n";
    expect((await readPacketFile(packet(file("j.yaml", tricky), manifest({ job: "j.yaml" })))).job).toBe(tricky);
  });
  test("files packed by another program are unpacked", async () => {
    const packed = (content: string) => stream(deflateSync(content).toString("latin1"), "/Filter /FlateDecode");
    const pdf = pdfOf([
      ...names("(j.yaml)", "4 0 R", "(packet.json)", "6 0 R"),
      "<</F (j.yaml) /EF <</F 5 0 R>>>>",
      packed("a: 1\n"),
      "<</F (packet.json) /EF <</F 7 0 R>>>>",
      packed('{"format":"branchwork-packet/1","job":"j.yaml"}'),
    ]);
    expect(await readPacketFile(pdf)).toEqual({ job: "a: 1\n", overlay: null });
  });
});

describe("one clear sentence for", () => {
  const told = async (pdf: Uint8Array) => {
    const error = await readPacketFile(pdf).then(
      () => null,
      (thrown: unknown) => thrown,
    );
    expect(error).toMatchObject({ name: "PacketFileError" });
    return (error as Error).message;
  };
  test("what is no PDF", async () => expect(await told(new TextEncoder().encode(job))).toMatch(/not a PDF/));
  test("a PDF without files", async () => expect(await told(pdfOf(PAGE))).toMatch(/carries no job file/));
  test("another's manifest", async () => expect(await told(packet(file("packet.json", "{}")))).toMatch(/carries no job file/));
  test("a manifest that names what is not there", async () => expect(await told(packet(manifest({ job: "gone.yaml" })))).toMatch(/does not carry: gone/));
  test("a job that is not text", async () =>
    expect(await told(packet({ ...file("j.yaml", ""), bytes: Uint8Array.of(0xff, 0xfe, 0) }, manifest({ job: "j.yaml" })))).toMatch(/not text/));
  test("a locked one", async () => expect(await told(pdfOf(PAGE, "/Encrypt 9 0 R"))).toMatch(/password/));
  test("a table that leads to itself", async () => {
    const pdf = pdfOf(PAGE, "/Prev 0000000000");
    const text = Buffer.from(pdf).toString("latin1");
    const start = text.lastIndexOf("\nxref") + 1;
    expect(await told(Buffer.from(text.replace("/Prev 0000000000", `/Prev ${String(start).padStart(10, "0")}`), "latin1"))).toMatch(/damaged/);
  });
  test("a table of streams", async () =>
    expect(await told(new TextEncoder().encode("%PDF-1.7\n9 0 obj\n<<>>\nendobj\nstartxref\n9\n%%EOF"))).toMatch(/another program/));
  test("a list of files that runs in a circle", async () => {
    const pdf = pdfOf(["<</Type /Catalog /Names <</EmbeddedFiles 4 0 R>>>>", PAGE[1], PAGE[2], "<</Kids [4 0 R]>>"]);
    expect(await told(pdf)).toMatch(/damaged/);
  });
  test("nests without end", async () => {
    expect(await told(pdfOf(["<</Type /Catalog /Names ".concat("[".repeat(5_000)), PAGE[1], PAGE[2]]))).toMatch(/damaged/);
  });
  test("a small file that unpacks to gigabytes", async () => {
    const bomb = deflateSync(Buffer.alloc(50_000_000)).toString("latin1");
    const pdf = pdfOf([...names("(packet.json)", "4 0 R"), "<</F (packet.json) /EF <</F 5 0 R>>>>", stream(bomb, "/Filter /FlateDecode")]);
    expect(await told(pdf)).toMatch(/larger than any job file/);
  });
  test("a length beyond its end", async () => {
    const pdf = pdfOf([...names("(packet.json)", "4 0 R"), "<</F (packet.json) /EF <</F 5 0 R>>>>", "<</Length 9999999>>\nstream\nx\nendstream"]);
    expect(await told(pdf)).toMatch(/damaged/);
  });
  test("a packet cut short or spoilt anywhere", async () => {
    const pdf = packet(file("j.yaml", "a: 1\n"), manifest({ job: "j.yaml" }));
    for (let at = 0; at < pdf.length; at += 7) {
      const cut: unknown = await readPacketFile(pdf.subarray(0, at)).catch((error: unknown) => error);
      // What stands behind the last table may be lost.
      if (at < pdf.length - 8) expect(cut).toMatchObject({ name: "PacketFileError" });
      const spoilt = pdf.slice();
      spoilt[at] = spoilt[at]! ^ 0x15;
      const outcome: unknown = await readPacketFile(spoilt).catch((error: unknown) => error);
      if (outcome instanceof Error) expect(outcome.name).toBe("PacketFileError");
    }
  });
});

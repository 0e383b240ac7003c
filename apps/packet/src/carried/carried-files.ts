import { createHash } from "node:crypto";
import { basename } from "node:path";
import type { Edition } from "@branchwork/engine";
import { PACKET_SETS, PAPERS, type PacketSet, type Paper } from "@branchwork/sheets";
import { z } from "zod";
import type { Loaded, NamedText } from "../load-design.js";
import type { Attachment } from "../print/attach.js";

/** What a packet says of itself: enough to work it again and to see whether its pages are as they were printed. */
export const manifestSchema = z.strictObject({
  format: z.literal("branchwork-packet/1"),
  date: z.string(),
  /** The edition asked on the command line; absent where the overlay or the job decided. */
  edition: z.string().optional(),
  /** Which of the sets; a packet made before there were three is a submittal. */
  set: z.enum(PACKET_SETS).default("submittal"),
  /** A packet made before there was a choice is on Letter. */
  paper: z.enum(PAPERS).default("letter"),
  job: z.string(),
  overlay: z.string().optional(),
  prices: z.string().optional(),
  /** Bytes of the PDF as printed, before these files were put in, and their digest. */
  pages: z.strictObject({ bytes: z.number().int().positive(), sha256: z.string() }),
  html_sha256: z.string(),
});
export type Manifest = z.output<typeof manifestSchema>;

export const NAMES = { manifest: "packet.json", design: "design.json" } as const;

export const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");

/** The design as its file holds it. */
export const designJson = (design: Loaded["design"]): string => `${JSON.stringify({ format: "branchwork-design/1", ...design }, null, 2)}\n`;

/** The files a packet carries inside: its job, its overlay, the design with every number, and what ties them to the pages. */
export function carriedFiles(given: {
  readonly loaded: Loaded;
  readonly date: string;
  readonly edition: Edition | undefined;
  readonly set: PacketSet;
  readonly paper: Paper;
  readonly prices: NamedText | undefined;
  readonly html: string;
  readonly pdf: Uint8Array;
}): readonly Attachment[] {
  const { job, overlay } = given.loaded.sources;
  const { prices } = given;
  const names = {
    job: plainName(job.file, "job.yaml"),
    ...(overlay === undefined ? {} : { overlay: `overlay-${plainName(overlay.file, "overlay.yaml")}` }),
    ...(prices === undefined ? {} : { prices: `prices-${plainName(prices.file, "prices.yaml")}` }),
  };
  const manifest: Manifest = {
    format: "branchwork-packet/1",
    date: given.date,
    ...(given.edition === undefined ? {} : { edition: given.edition }),
    set: given.set,
    paper: given.paper,
    ...names,
    pages: { bytes: given.pdf.length, sha256: sha256(given.pdf) },
    html_sha256: sha256(given.html),
  };
  const text = (content: string) => new TextEncoder().encode(content);
  return [
    { name: names.job, bytes: text(job.text), media: "application/yaml", description: "The job file this packet was made from" },
    ...(overlay === undefined || names.overlay === undefined
      ? []
      : [{ name: names.overlay, bytes: text(overlay.text), media: "application/yaml", description: "The jurisdiction's overlay" }]),
    ...(prices === undefined || names.prices === undefined
      ? []
      : [{ name: names.prices, bytes: text(prices.text), media: "application/yaml", description: "The price book" }]),
    { name: NAMES.design, bytes: text(designJson(given.loaded.design)), media: "application/json", description: "Every worked value and finding" },
    { name: NAMES.manifest, bytes: text(`${JSON.stringify(manifest, null, 2)}\n`), media: "application/json", description: "What this packet was made from" },
  ];
}

/** A file name made of letters, digits, dots, dashes and underscores alone. */
function plainName(path: string, otherwise: string): string {
  const name = basename(path).replace(/[^A-Za-z0-9._-]+/g, "-");
  return /^[A-Za-z0-9]/.test(name) && name !== NAMES.design && name !== NAMES.manifest ? name : otherwise;
}

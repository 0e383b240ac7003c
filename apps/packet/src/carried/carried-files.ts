import { createHash } from "node:crypto";
import { basename } from "node:path";
import type { Edition } from "@branchwork/engine";
import { PACKET_SETS, PAPERS, type PacketSet, type Paper, type Revision } from "@branchwork/sheets";
import { z } from "zod";
import type { Loaded, NamedText } from "../load-design.js";
import type { Attachment } from "../print/attach.js";

/** A table of more is no longer read. */
export const MOST_REVISIONS = 99;

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
  /** Of the sheets as printed, a revision's marks among them. */
  html_sha256: z.string(),
  /** The rows of the revision table, oldest first; the last is the one marked. */
  revisions: z
    .array(z.strictObject({ number: z.string(), date: z.string(), says: z.string() }))
    .min(1)
    .max(MOST_REVISIONS)
    .optional(),
  /** What the marked revision was compared with. */
  was: z.strictObject({ job: z.string(), overlay: z.string().optional(), edition: z.string().optional() }).optional(),
});
export type Manifest = z.output<typeof manifestSchema>;

export const NAMES = { manifest: "packet.json", design: "design.json" } as const;

export const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");

/** The design as a file holds it: on one line, or over many for a reader. */
export const designJson = (design: Loaded["design"], indent?: number): string =>
  `${JSON.stringify({ format: "branchwork-design/1", ...design }, null, indent)}\n`;

/** The revision a packet is marked with, and what it was compared with. */
export interface CarriedRevision {
  /** Oldest first; the last is the one marked. */
  readonly revisions: readonly Revision[];
  readonly was: { readonly job: NamedText; readonly overlay?: NamedText | undefined; readonly edition?: Edition | undefined };
}

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
  readonly revised?: CarriedRevision | undefined;
}): readonly Attachment[] {
  const { job, overlay } = given.loaded.sources;
  const { prices, revised } = given;
  const text = (content: string) => new TextEncoder().encode(content);
  const files: Attachment[] = [];
  const put = (name: string, source: NamedText, description: string): string => {
    // Two sources may go by one name, as a job of that name before and after its revision.
    let own = name;
    while (files.some((file) => file.name === own)) own = `also-${own}`;
    files.push({ name: own, bytes: text(source.text), media: "application/yaml", description });
    return own;
  };
  const names = {
    job: put(plainName(job.file, "job.yaml"), job, "The job file this packet was made from"),
    ...(overlay === undefined ? {} : { overlay: put(`overlay-${plainName(overlay.file, "overlay.yaml")}`, overlay, "The jurisdiction's overlay") }),
    ...(prices === undefined ? {} : { prices: put(`prices-${plainName(prices.file, "prices.yaml")}`, prices, "The price book") }),
  };
  const was = revised?.was;
  const before = was && {
    job: put(`was-${plainName(was.job.file, "job.yaml")}`, was.job, "The job file before this revision"),
    ...(was.overlay === undefined
      ? {}
      : { overlay: put(`was-overlay-${plainName(was.overlay.file, "overlay.yaml")}`, was.overlay, "The overlay before this revision") }),
    ...(was.edition === undefined ? {} : { edition: was.edition }),
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
    ...(revised === undefined ? {} : { revisions: [...revised.revisions] }),
    ...(before === undefined ? {} : { was: before }),
  };
  return [
    ...files,
    { name: NAMES.design, bytes: text(designJson(given.loaded.design)), media: "application/json", description: "Every worked value and finding" },
    { name: NAMES.manifest, bytes: text(`${JSON.stringify(manifest, null, 2)}\n`), media: "application/json", description: "What this packet was made from" },
  ];
}

/** A file name made of letters, digits, dots, dashes and underscores alone, short enough for a name before it. */
function plainName(path: string, otherwise: string): string {
  const name = basename(path)
    .replace(/[^A-Za-z0-9._-]+/g, "-")
    .replace(/^(.{100}).*?(\.[A-Za-z]{1,5})?$/, "$1$2");
  return /^[A-Za-z0-9]/.test(name) && name !== NAMES.design && name !== NAMES.manifest ? name : otherwise;
}

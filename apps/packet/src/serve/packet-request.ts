import { EDITIONS } from "@branchwork/engine";
import { PACKET_SETS, PAPERS, readOverlay } from "@branchwork/sheets";
import { z } from "zod";
import { dateOf } from "../build.js";
import { designText, InputError, type Loaded } from "../load-design.js";
import { Refusal } from "./refusal.js";

const asked = z.strictObject({
  job: z.string().max(300_001),
  overlay: z.string().max(300_001).optional(),
  edition: z.enum(EDITIONS).optional(),
  date: z.string().max(10).optional(),
  set: z.enum(PACKET_SETS).default("submittal"),
  paper: z.enum(PAPERS).optional(),
});

/** A packet asked for: designed, with the date it is to carry. */
export interface PacketRequest extends Pick<z.output<typeof asked>, "edition" | "set" | "paper"> {
  readonly loaded: Loaded;
  readonly date: string;
}

/** Reads and designs what a request's body asks for. Throws Refusal, with the places at fault where a text is. */
export function packetRequest(body: string): PacketRequest {
  let plain: unknown;
  try {
    plain = JSON.parse(body);
  } catch {
    throw new Refusal(400, "the body is not JSON");
  }
  const parsed = asked.safeParse(plain);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new Refusal(
      400,
      `the body is not {"job": text, "overlay"?: text, "edition"?: year, "date"?: day, "set"?: name, "paper"?: name}: ${issue?.path.join(".")} ${issue?.message}`,
    );
  }
  const { job, overlay, edition, set, paper } = parsed.data;
  try {
    const date = dateOf(parsed.data.date);
    if (overlay !== undefined) refuseExtending(overlay);
    const texts = { job: { file: "job.yaml", text: job }, overlay: overlay === undefined ? undefined : { file: "overlay.yaml", text: overlay } };
    return { loaded: designText({ ...texts, edition }), date, edition, set, paper };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new Refusal(422, error.message, {}, error.issues.map((issue) => ({ file: error.file, ...issue })).slice(0, 100));
  }
}

// A request reaches no file: what an overlay extends has to be in it.
function refuseExtending(text: string): void {
  const reading = readOverlay(text);
  if (!reading.ok || reading.overlay.extends === undefined) return;
  const { line, column } = reading.placed.fields.extends ?? { line: 1, column: 1 };
  throw new InputError("overlay.yaml", [
    { line, column, path: "extends", what: "an overlay given here cannot extend another file", mend: "write into it what the extended file says" },
  ]);
}

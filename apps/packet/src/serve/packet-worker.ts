import { parentPort } from "node:worker_threads";
import { type PrintDocument, packetFiles } from "../build.js";
import { packetFonts } from "../fonts.js";
import { InputError } from "../load-design.js";
import { MissingGlyphError } from "../print/print-error.js";
import { type FromMaker, type ToMaker, UNPRINTED } from "./maker-messages.js";
import { packetRequest } from "./packet-request.js";
import { Refusal } from "./refusal.js";

// The program of one maker's thread: works one request after another, and asks the thread it came from for the print.
const port = parentPort;
if (port === null) throw new Error("this program runs in a thread of `serve`");
const say = (message: FromMaker, moved: readonly ArrayBuffer[] = []) => port.postMessage(message, [...moved]);
const fonts = packetFonts();
let printed: ((message: ToMaker) => void) | undefined;

const print: PrintDocument = (html, { date, expectText }) =>
  new Promise((resolve, reject) => {
    printed = (message) => {
      if (message.kind === "printed") resolve(message.pdf);
      else reject(message.kind === "glyph-missing" ? new MissingGlyphError(message.says) : new Error(UNPRINTED));
    };
    say({ kind: "print", html, date, expectText });
  });

async function make(body: string): Promise<void> {
  try {
    const { loaded, date, edition, set, paper } = packetRequest(body);
    const terms = { loaded, date, edition, sets: [set], ...(paper === undefined ? {} : { paper }) };
    const [pdf] = await packetFiles({ name: "packet", ...terms, formats: ["pdf"], fonts: await fonts, print });
    const bytes = Buffer.from(pdf!.bytes); // a copy of its own: the memory is handed over
    const whole = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    say({ kind: "made", pdf: new Uint8Array(whole), ready: loaded.design.ready }, [whole]);
  } catch (error) {
    if (error instanceof Refusal) say({ kind: "refused", status: error.status, says: error.message, issues: error.issues });
    else if (error instanceof InputError) {
      const issues = error.issues.map((issue) => ({ file: error.file, ...issue })).slice(0, 100);
      say({ kind: "refused", status: 422, says: error.message, issues });
    } else say({ kind: "fault", says: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

port.on("message", (message: ToMaker) => {
  if (message.kind === "make") void make(message.body);
  else printed?.(message);
});

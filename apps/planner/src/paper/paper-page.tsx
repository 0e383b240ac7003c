import type { PacketSet } from "@branchwork/sheets";
import { useEffect, useRef, useState } from "preact/hooks";
import { go, planner } from "../planner.js";
import { Downloads } from "../steps/review.js";
import { ask } from "../work/client.js";
import { MachinePdf, useMachinePrinter } from "./machine-pdf.js";
import { today } from "./today.js";

type Made = { readonly html: string; readonly of: string } | { readonly refused: string } | null;

const SETS: readonly { readonly set: PacketSet; readonly says: string }[] = [
  { set: "submittal", says: "The permit office" },
  { set: "field", says: "The inspector on site" },
  { set: "owner", says: "Me, to keep and to work by" },
];

/** A sheet is 7.25 in wide: on a narrow screen it is drawn smaller, in print never. */
function fitToScreen(document: Document, width: number): void {
  const style = document.createElement("style");
  style.textContent = `@media screen { html { zoom: ${Math.min(1, width / 730).toFixed(3)} } body { padding: 12px } }`;
  document.head.append(style);
}

/** The packet, page for page, in a frame that may run nothing. */
export function PaperPage() {
  const { text, overlay } = planner();
  const [chosenSet, setChosenSet] = useState<PacketSet>("submittal");
  const [made, setMade] = useState<Made>(null);
  const frame = useRef<HTMLIFrameElement>(null);
  const [ready, setReady] = useState(false);
  const print = () => frame.current?.contentWindow?.print();
  // The browser's own key for printing means the packet here, not the page around it.
  useEffect(() => {
    const keys = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "p" || frame.current?.dataset.shown !== "packet") return;
      event.preventDefault();
      print();
    };
    addEventListener("keydown", keys);
    return () => removeEventListener("keydown", keys);
  }, []);
  const key = `${text}\0${overlay?.text ?? ""}\0${chosenSet}`;
  const machine = useMachinePrinter();
  useEffect(() => {
    let gone = false;
    setMade(null);
    frame.current?.setAttribute("data-shown", "earlier");
    ask({ ask: "packet", job: text, overlay: overlay?.text ?? null, date: today(), set: chosenSet }).then(
      (answer) => {
        if (!gone) setMade(answer.ok ? { html: answer.text, of: key } : { refused: "The job is not whole yet: answer what is still wanted." });
      },
      (error: unknown) => {
        if (!gone) setMade({ refused: `The packet could not be made: ${error instanceof Error ? error.message : String(error)}` });
      },
    );
    return () => {
      gone = true;
    };
  }, [key]);
  useEffect(() => {
    const within = frame.current?.contentWindow as (Window & typeof globalThis) | null | undefined;
    if (!ready || !within || made === null || !("html" in made)) return;
    const { document } = within;
    // Parsed in the frame: it has a content policy of its own that allows the packet's style; the page's does not.
    const packet = new within.DOMParser().parseFromString(made.html, "text/html");
    document.replaceChild(document.adoptNode(packet.documentElement), document.documentElement);
    fitToScreen(within.document, within.innerWidth);
    frame.current?.setAttribute("data-shown", "packet");
  }, [made, ready]);
  return (
    <main id="main" class="paper-page">
      <header class="row">
        <h2>The packet</h2>
        <button type="button" onClick={() => go("plan")}>
          Back to the questions
        </button>
        <button type="button" class="main" disabled={made === null || !("html" in made)} onClick={print}>
          Print
        </button>
      </header>
      <fieldset class="field">
        <legend>Who is it for?</legend>
        <div class="answer">
          {SETS.map((each) => (
            <label class="radio" key={each.set}>
              <input type="radio" name="set" checked={chosenSet === each.set} onChange={() => setChosenSet(each.set)} />
              {each.says}
            </label>
          ))}
        </div>
      </fieldset>
      {machine && <MachinePdf set={chosenSet} />}
      <p class="hint">To keep a PDF, press Print and choose “Save as PDF”. Sign and date it by hand.</p>
      {made === null && <p role="status">Making the packet…</p>}
      {made !== null && "refused" in made && (
        <p class="wrong" role="alert">
          {made.refused}
        </p>
      )}
      <p class="on-paper">This is the page around the packet. To print the packet, press “Print” on the page.</p>
      <iframe ref={frame} title="The packet" src="./paper.html" sandbox="allow-same-origin allow-modals" onLoad={() => setReady(true)} />
      <Downloads set={chosenSet} />
    </main>
  );
}

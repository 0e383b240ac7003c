import type { PacketSet } from "@branchwork/sheets";
import { useEffect, useState } from "preact/hooks";
import { textAt } from "../job/document.js";
import { planner } from "../planner.js";
import { downloadBlob, fileName } from "./files.js";
import { today } from "./today.js";

/** Whether the page comes from a packet maker on this machine, which says so in its answers. Asked nowhere else. */
export function useMachinePrinter(): boolean {
  const [there, setThere] = useState(false);
  useEffect(() => {
    if (!["127.0.0.1", "localhost"].includes(location.hostname) || !navigator.onLine) return;
    let gone = false;
    fetch("./", { method: "HEAD", cache: "no-store" }).then(
      (answer) => {
        if (!gone) setThere(answer.headers.get("x-branchwork-packets") !== null);
      },
      () => undefined, // stopped since: the page goes on without it
    );
    return () => {
      gone = true;
    };
  }, []);
  return there;
}

/** The packet as a PDF, printed by the program that serves the page; the job file travels inside it. */
export function MachinePdf({ set }: { readonly set: PacketSet }) {
  const { text, overlay, plain, issues } = planner();
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState("");
  const made = async () => {
    setBusy(true);
    setRefused("");
    try {
      const answer = await fetch("./packet", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ job: text, ...(overlay === null ? {} : { overlay: overlay.text }), date: today(), set }),
      });
      const suffix = set === "submittal" ? "" : `-${set}`;
      if (answer.ok) downloadBlob(`${fileName(textAt(plain, ["project", "title"]))}${suffix}.pdf`, await answer.blob());
      else setRefused(`It was not made: ${((await answer.json()) as { readonly error?: string }).error ?? answer.status}`);
    } catch (error) {
      setRefused(`It was not made; does the program still run? ${error instanceof Error ? error.message : String(error)}`);
    }
    setBusy(false);
  };
  return (
    <p class="answer">
      <button type="button" disabled={busy || issues.length > 0} onClick={() => void made()}>
        {busy ? "Printing…" : "PDF by this machine"}
      </button>
      <span class="hint">Made by the program that serves this page. The job file is inside it, and can be opened here again.</span>
      {refused && (
        <span class="wrong" role="alert">
          {refused}
        </span>
      )}
    </p>
  );
}

import { useState } from "preact/hooks";
import { at, type Edit, listAt, textAt } from "../job/document.js";
import { readChosenFile } from "../paper/files.js";
import { edit, planner } from "../planner.js";
import type { ShownChoice, ShownStretch } from "../work/choosing.js";
import { askSearch, endSearch } from "../work/client.js";
import type { Digest, ShownRun } from "../work/digest.js";
import type { ChooseAnswer } from "../work/protocol.js";
import { OtherWires } from "./other-wires.js";

const ENDED = "ended";
type Whole = Extract<ChooseAnswer, { ok: true }>;

/** The cheapest lawful way and the other lawful wires, looked for when asked: it takes seconds. */
export function Choices({ digest }: { readonly digest: Digest }) {
  const { text, overlay, stale } = planner();
  const [busy, setBusy] = useState(false);
  const [found, setFound] = useState<{ readonly of: string; readonly answer: Whole } | null>(null);
  const [refused, setRefused] = useState("");
  const [prices, setPrices] = useState<{ readonly name: string; readonly text: string } | null>(null);
  const [anyMethod, setAnyMethod] = useState(false);
  const key = `${text}\0${overlay?.text ?? ""}\0${prices?.text ?? ""}\0${anyMethod}`;
  const shown = found?.of === key ? found.answer : null;
  const look = async () => {
    setBusy(true);
    setRefused("");
    try {
      const answer = await askSearch({ ask: "choose", job: text, overlay: overlay?.text ?? null, prices: prices?.text ?? null, anyMethod });
      if (answer.ok) setFound({ of: key, answer });
      else {
        const issue = answer.issues[0];
        setRefused(issue?.of === "prices" ? `Price book, line ${issue.line}: ${issue.what}. ${issue.mend}.` : "First give what is still wanted.");
      }
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      if (why !== ENDED) setRefused(`It could not be computed: ${why}`);
    }
    setBusy(false);
  };
  return (
    <details class="more choices">
      <summary>Cheapest lawful wire, and others</summary>
      <p class="hint">
        Tries every wire and raceway size against every rule of this job. Sizes you gave are kept. Prices:{" "}
        {prices === null ? "example figures, invented. Open a price book of your own to trust the sums." : prices.name}
      </p>
      <label class="radio">
        <input type="checkbox" checked={anyMethod} onChange={(event) => setAnyMethod(event.currentTarget.checked)} />
        Try other kinds of cable and raceway too
      </label>
      <p class="answer">
        <button type="button" disabled={busy || stale} onClick={() => void look()}>
          {busy ? "Looking…" : "Look for the cheapest"}
        </button>
        {busy && (
          <button type="button" onClick={endSearch}>
            Stop looking
          </button>
        )}
        <label class="button">
          My price book
          <input
            type="file"
            accept=".yaml,.yml"
            class="unseen"
            onChange={async (event) => {
              const read = await readChosenFile(event.currentTarget);
              if (read === null) return;
              setRefused("refused" in read ? read.refused : "");
              if (!("refused" in read)) setPrices(read);
            }}
          />
        </label>
      </p>
      <p role="status" class="hint">
        {busy
          ? "Looking; this takes some seconds. You can go on meanwhile."
          : found !== null && shown === null
            ? "The answers have changed since: look again."
            : ""}
      </p>
      {refused && (
        <p class="wrong" role="alert">
          {refused}
        </p>
      )}
      {shown !== null && (
        <>
          {!shown.withinWholeWay && <p class="wrong">No choice keeps feeder and circuit together within 5 %; each keeps its own limit.</p>}
          {digest.runs.map((run) => {
            const choice = shown.runs.find(({ id }) => id === run.id);
            const ways = shown.alternatives.find(({ id }) => id === run.id)?.ways ?? [];
            return choice === undefined ? null : (
              <section key={run.id} aria-label={`Choices for ${run.name}`}>
                <Cheapest run={run} choice={choice} currency={shown.currency} />
                <OtherWires run={run} ways={ways} currency={shown.currency} />
              </section>
            );
          })}
          <p class="hint">By likely cost of wire, raceway and fittings along the way, before rounding to what is sold. Prices: {shown.source}.</p>
        </>
      )}
    </details>
  );
}

function Cheapest({ run, choice, currency }: { readonly run: ShownRun; readonly choice: ShownChoice; readonly currency: string }) {
  const { plain } = planner();
  if (choice.none)
    return (
      <>
        <h4>{run.name}</h4>
        <p>No lawful choice was found: {choice.none}</p>
      </>
    );
  const edits = editsFor(plain, run, choice.stretches);
  return (
    <>
      <h4>{run.name}: the cheapest</h4>
      <ul>
        {choice.stretches.map((s) => (
          <li key={s.name}>
            {s.name}: {s.wire}, {s.tradeSize === null ? s.method : `${s.tradeSize} in ${s.method}`}
          </li>
        ))}
      </ul>
      <p>
        About {Math.round(Number(choice.cost))} {currency}, voltage drop {Math.round(Number(choice.dropPercent) * 10) / 10} %.
      </p>
      {edits.length === 0 ? (
        <p class="hint">The job has this already.</p>
      ) : (
        <button type="button" onClick={() => edit(edits)}>
          Take it<span class="unseen"> for {run.name}</span>
        </button>
      )}
    </>
  );
}

/** What has to be written so that the run is built so; nothing that stands there already. */
function editsFor(plain: unknown, run: ShownRun, stretches: readonly ShownStretch[]): readonly Edit[] {
  const route = [...run.path, "route"];
  return listAt(plain, route).flatMap((_, i): Edit[] => {
    const stretch = stretches[i];
    if (stretch === undefined) return [];
    const wanted: readonly (readonly [path: readonly string[], put: string])[] = [
      [["method"], stretch.method],
      ...(stretch.material === "copper" && at(plain, [...route, i, "conductors", "material"]) === undefined
        ? []
        : [[["conductors", "material"], stretch.material] as const]),
      [["conductors", "size"], stretch.size],
      ...(stretch.tradeSize === null ? [] : [[["trade_size"], stretch.tradeSize] as const]),
    ];
    return wanted.flatMap(([path, put]) => (textAt(plain, [...route, i, ...path]) === put ? [] : [{ at: [...route, i, ...path], put }]));
  });
}

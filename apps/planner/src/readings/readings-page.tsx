import { useEffect, useState } from "preact/hooks";
import { planner } from "../planner.js";
import { ask } from "../work/client.js";
import type { ReadingsAnswer, ShownBand } from "../work/protocol.js";

type Volts = Readonly<Record<string, string>>;
interface Entered {
  readonly idle: Volts;
  readonly across: string;
  readonly amperes: string;
  readonly loaded: Volts;
  readonly meter: string;
}
const NONE: Entered = { idle: {}, across: "", amperes: "", loaded: {}, meter: "" };

/** As the file of readings would say it; null where nothing is entered. */
function enteredText(circuit: string, entered: Entered): string | null {
  const filled = (volts: Volts) => Object.fromEntries(Object.entries(volts).filter(([, value]) => value.trim() !== ""));
  const idle = filled(entered.idle);
  const loaded = filled(entered.loaded);
  if (Object.keys(idle).length === 0) return null;
  return JSON.stringify({
    format: "branchwork-readings/1",
    circuit,
    ...(entered.meter === "" ? {} : { meter: entered.meter }),
    idle,
    ...(entered.amperes.trim() === "" || Object.keys(loaded).length === 0
      ? {}
      : { loaded: { across: entered.across, amperes: entered.amperes, readings: loaded } }),
  });
}

/** For the driveway: what the meter shows at the outlet, and what it tells. */
export function ReadingsPage() {
  const { digest, text, overlay } = planner();
  const outlets = digest?.runs.filter((run) => run.outlet) ?? [];
  const [chosen, setChosen] = useState("");
  const outlet = outlets.find(({ id }) => id === chosen) ?? outlets[0];
  const [entered, setEntered] = useState<Entered>(NONE);
  const [answered, setAnswered] = useState<{ readonly of: string | null; readonly value: ReadingsAnswer } | null>(null);
  const [failure, setFailure] = useState("");
  const given = outlet === undefined ? null : enteredText(outlet.id, entered);
  useEffect(() => {
    if (outlet === undefined) return;
    let gone = false;
    ask({ ask: "readings", job: text, overlay: overlay?.text ?? null, circuit: outlet.id, entered: given }).then(
      (value) => {
        if (gone) return;
        setFailure("");
        setAnswered({ of: given, value });
      },
      (error: unknown) => {
        if (!gone) setFailure(error instanceof Error ? error.message : String(error));
      },
    );
    return () => {
      gone = true;
    };
  }, [outlet?.id, given, text, overlay?.text]);
  if (outlet === undefined)
    return (
      <main id="main">
        <h2>Readings at the outlet</h2>
        <p class="note">There is no outlet to read yet: answer the questions of the plan first.</p>
      </main>
    );
  const answer = answered?.value ?? null;
  const firstLoad = answer?.loaded[0];
  const across = entered.across || firstLoad?.across || "";
  const load = answer?.loaded.find((each) => each.across === across) ?? firstLoad;
  return (
    <main id="main" class="readings">
      <h2>Readings at the outlet</h2>
      <ul class="note">
        <li>Electricity kills. Readings on live parts are for a qualified person.</li>
        <li>Prove the tester on a known live source, test, prove it again. Set it above 300 V.</li>
        <li>Stop if any reading is out of band: breaker off and locked, plug nothing in, find the cause.</li>
      </ul>
      <div class="row">
        <div class="field">
          <label for="outlet">Outlet</label>
          <select
            id="outlet"
            value={outlet.id}
            onChange={(event) => {
              setChosen(event.currentTarget.value);
              setEntered(NONE);
            }}
          >
            {outlets.map((run) => (
              <option value={run.id} key={run.id}>
                {run.name}
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for="meter">Meter</label>
          <select id="meter" value={entered.meter} onChange={(event) => setEntered({ ...entered, meter: event.currentTarget.value })}>
            <option value="">I don’t know</option>
            <option value="high-impedance">A usual digital meter</option>
            <option value="low-impedance">Its LoZ setting</option>
          </select>
        </div>
      </div>
      <h3>Breaker on, nothing plugged in</h3>
      {answer?.idle.map((band) => (
        <Reading
          band={band}
          state="idle"
          value={entered.idle[band.reading] ?? ""}
          put={(value) => setEntered({ ...entered, idle: { ...entered.idle, [band.reading]: value } })}
          key={band.reading}
        />
      ))}
      {load && (
        <details class="more">
          <summary>With a load on ({load.says})</summary>
          <div class="row">
            {answer!.loaded.length > 1 && (
              <div class="field">
                <label for="across">The load is across</label>
                <select id="across" value={across} onChange={(event) => setEntered({ ...entered, across: event.currentTarget.value })}>
                  {answer!.loaded.map((each) => (
                    <option key={each.across}>{each.across}</option>
                  ))}
                </select>
              </div>
            )}
            <div class="field">
              <label for="amperes">Its amperes</label>
              <input
                id="amperes"
                type="text"
                inputMode="decimal"
                value={entered.amperes}
                onInput={(event) => setEntered({ ...entered, across, amperes: event.currentTarget.value })}
              />
            </div>
          </div>
          {load.bands.map((band) => (
            <Reading
              band={band}
              state="loaded"
              value={entered.loaded[band.reading] ?? ""}
              put={(value) => setEntered({ ...entered, across, loaded: { ...entered.loaded, [band.reading]: value } })}
              key={band.reading}
            />
          ))}
        </details>
      )}
      {failure && (
        <p class="wrong" role="alert">
          The computation broke: {failure}
        </p>
      )}
      {answer?.issues.map((issue) => (
        <p class="wrong" key={issue.path}>
          {issue.what}. {issue.mend}
        </p>
      ))}
      {answered !== null && answered.of !== given ? <p role="status">Judging…</p> : <Verdict answer={answer} />}
    </main>
  );
}

function Reading({
  band,
  state,
  value,
  put,
}: {
  readonly band: ShownBand;
  readonly state: string;
  readonly value: string;
  readonly put: (value: string) => void;
}) {
  const id = `reading-${state}-${band.reading}`;
  const number = Number(value);
  const judged = value.trim() === "" || !Number.isFinite(number) ? "" : number >= band.least && number <= band.most ? "in band" : "OUT OF BAND";
  return (
    <div class="reading">
      <label for={id}>
        {band.words} <span class="hint">({band.reading})</span>
      </label>
      <span class="quantity">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={value}
          aria-describedby={`${id}-band`}
          onInput={(event) => put(event.currentTarget.value)}
        />
        <span class="unit">V</span>
      </span>
      <span id={`${id}-band`}>
        {band.least.toFixed(1)} to {band.most.toFixed(1)} V {judged && <b class={judged === "in band" ? "" : "out"}>{judged}</b>}
      </span>
    </div>
  );
}

function Verdict({ answer }: { readonly answer: ReadingsAnswer | null }) {
  const diagnosis = answer?.diagnosis;
  if (!diagnosis) return null;
  return (
    <section aria-labelledby="verdict" aria-live="polite" class="card">
      <h3 id="verdict">{diagnosis.verdict === "pass" ? "Pass" : diagnosis.verdict === "need-more" ? "Not a pass yet" : "Fault: stop"}</h3>
      <p>{diagnosis.says}</p>
      {diagnosis.verdict === "need-more" && (
        <p>
          <b>Read next: {diagnosis.decides}.</b> Not read: {diagnosis.missing.join(", ")}.
        </p>
      )}
      {diagnosis.verdict === "pass" && diagnosis.notProved.length > 0 && (
        <>
          <p>Not proved by these readings:</p>
          <ul>
            {diagnosis.notProved.map((each) => (
              <li key={each.id}>
                {each.says}. Prove it by: {each.provedBy}
              </li>
            ))}
          </ul>
        </>
      )}
      {diagnosis.verdict === "faults" && (
        <>
          <ul>
            {diagnosis.outOfBand.map((each) => (
              <li key={each.says}>{each.says}</li>
            ))}
          </ul>
          <ol>
            {diagnosis.ranked.map((fault) => (
              <li key={fault.id + fault.variant}>
                <b>{fault.says}</b>
                {fault.fits ? "" : " (fits poorly)"}
                <br />
                Stop: {fault.stop}
                <br />
                Do: {fault.toDo}
              </li>
            ))}
          </ol>
          {diagnosis.decides && <p>Read next, it tells these apart: {diagnosis.decides}</p>}
        </>
      )}
      <p class="hint">Judged by simulation and common practice; it does not replace the inspection. Assumed: {answer?.assumptions.join("; ")}.</p>
    </section>
  );
}

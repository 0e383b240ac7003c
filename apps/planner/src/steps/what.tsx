import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { ChoiceField, NumberField, QuantityField, TextField, YesNoField } from "../field/inputs.js";
import { type Edit, printPath, textAt } from "../job/document.js";
import { freeId, freeSpaces, SERVICE_PANEL, type WrittenRun, writtenPanels, writtenRuns } from "../job/runs.js";
import { THINGS, type Thing } from "../job/starts.js";
import { takingOutRun } from "../job/taking-out.js";
import { edit, planner } from "../planner.js";

function added(thing: Thing, panelPath: readonly (string | number)[]): void {
  const { plain } = planner();
  const made = { ...thing.make(freeSpaces(plain, panelPath, thing.poles)) };
  made.id = freeId(plain, String(made.id));
  const list = [...panelPath, thing.feeder ? "feeders" : "circuits"];
  const count = writtenRuns(plain).filter(
    (run) => printPath(run.panelPath) === printPath(panelPath) && run.kind === (thing.feeder ? "feeder" : "circuit"),
  ).length;
  const edits: Edit[] = [{ add: made, at: list }];
  for (const path of thing.assumed ?? [])
    edits.push({ at: [...list, count, ...path], put: path.reduce<unknown>((here, key) => (here as Record<string, unknown>)[key], made), assumed: true });
  if (textAt(plain, ["project", "title"]) === "") edits.push({ at: ["project", "title"], put: thing.title });
  const scope = textAt(plain, ["project", "scope"]);
  if (scope === "") edits.push({ at: ["project", "scope"], put: `New: ${thing.title}.` });
  else if (/^New: [^.]*\./.test(scope)) edits.push({ at: ["project", "scope"], put: scope.replace(".", `; ${thing.title}.`) });
  edit(edits);
}

export function WhatStep() {
  const { plain } = planner();
  const runs = writtenRuns(plain);
  const panels = writtenPanels(plain);
  const [chosen, setChosen] = useState(0);
  const panel = panels[chosen] ?? panels[0]!;
  return (
    <>
      {runs.length > 0 && (
        <section aria-labelledby="in-job">
          <h3 id="in-job">In this job</h3>
          {runs.map((run) => (
            <Connected run={run} key={printPath(run.path)} />
          ))}
        </section>
      )}
      <AddPart first={runs.length === 0}>
        {panels.length > 1 && (
          <div class="field">
            <label for="fed-from">It is fed from</label>
            <select id="fed-from" value={String(chosen)} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
              {panels.map((each, i) => (
                <option value={String(i)} key={printPath(each.path)}>
                  {each.name}
                </option>
              ))}
            </select>
          </div>
        )}
        <ul class="things">
          {THINGS.map((thing) => (
            <li key={thing.key}>
              <button type="button" onClick={() => added(thing, panel.path)}>
                <b>{thing.says}</b>
                <span>{thing.tells}</span>
              </button>
            </li>
          ))}
        </ul>
        {printPath(panel.path) === printPath(SERVICE_PANEL) ? null : <p class="hint">It will leave {panel.name}.</p>}
      </AddPart>
    </>
  );
}

function AddPart({ first, children }: { readonly first: boolean; readonly children: ComponentChildren }) {
  return first ? (
    <section aria-label="Pick what will be connected">
      <p>
        Pick one. The questions that follow take about ten minutes; the panel’s label and a tape measure help. Every question says where its answer stands, and
        “I don’t know” is an answer.
      </p>
      {children}
    </section>
  ) : (
    <details class="more">
      <summary>Add something else to this job</summary>
      {children}
    </details>
  );
}

const BARE_LABEL = "On the label (nameplate) of the equipment, or in its manual.";

function Connected({ run }: { readonly run: WrittenRun }) {
  const thing = THINGS.find(({ key }) => key === run.serves);
  const at = (...path: (string | number)[]) => [...run.path, ...path];
  const rv = run.serves === "rv-50" || run.serves === "rv-30";
  return (
    <article class="card">
      <header>
        <h4>{run.name}</h4>
        <p class="hint">
          {thing?.says ?? run.serves}, from {run.panelName}
        </p>
        <button
          type="button"
          class="plain"
          onClick={() => {
            const { edits, says } = takingOutRun(planner().plain, run);
            edit(edits, "", says);
          }}
        >
          Take it out<span class="unseen">: {run.name}</span>
        </button>
      </header>
      <TextField path={at("name")} label="Name on the drawings" why="The panel directory and every sheet call it this." />
      {["ev-supply", "spa", "welder", "general", "motor"].includes(run.serves) && (
        <QuantityField
          path={at("current")}
          label="Amperes it draws"
          unit="A"
          why="It decides wire and breaker."
          find={BARE_LABEL}
          unknown={run.serves === "ev-supply" ? "48 A" : run.serves === "spa" ? "50 A" : "40 A"}
        />
      )}
      {run.serves === "generator-inlet" && (
        <ChoiceField
          path={at("current")}
          label="Rating of the inlet"
          why="The generator’s cord fits one of these."
          choices={[
            { value: "20 A", says: "20 A" },
            { value: "30 A", says: "30 A" },
            { value: "50 A", says: "50 A" },
          ]}
        />
      )}
      {run.serves === "generator-inlet" && (
        <>
          <YesNoField
            path={at("nameplate", "neutral_bonded")}
            label="Is the generator’s neutral bonded to its frame?"
            why="It decides whether the transfer must switch the neutral."
            find="In the generator’s manual: “bonded neutral” or “floating neutral”."
          />
          <ChoiceField
            path={at("nameplate", "transfer")}
            label="What puts the house on the generator?"
            why="Without it the generator feeds the street and kills a line worker."
            choices={[
              { value: "interlock", says: "An interlock in the panel" },
              { value: "manual-switch", says: "A manual transfer switch" },
              { value: "manual-switch-with-neutral", says: "A manual switch that switches the neutral too" },
              { value: "automatic", says: "An automatic transfer switch" },
              { value: "automatic-with-neutral", says: "An automatic switch that switches the neutral too" },
            ]}
          />
        </>
      )}
      {["range", "water-heater", "heat", "dryer"].includes(run.serves) && (
        <QuantityField
          path={at("nameplate", "load")}
          label="Kilowatts on its label"
          unit="kW"
          why="It decides the load."
          find={BARE_LABEL}
          {...(run.serves === "dryer"
            ? { otherwise: "Left empty: 5 kW, the least the code counts." }
            : { unknown: run.serves === "range" ? "12 kW" : "4.5 kW" })}
        />
      )}
      {run.serves === "welder" && (
        <NumberField
          path={at("nameplate", "duty_percent")}
          label="Duty cycle at that current, percent"
          why="A welder rests between welds, which allows a smaller wire."
          find={BARE_LABEL}
          unknown={100}
        />
      )}
      {["ev-supply", "spa", "water-heater", "air-conditioner", "motor", "heat"].includes(run.serves) && (
        <ChoiceField
          path={at("disconnect")}
          label="What switches it off while somebody works on it?"
          why="The code asks for one that stays off."
          empty="I don’t know"
          choices={[
            { value: "in-sight", says: "A switch in sight of it" },
            { value: "lockable-breaker", says: "Its breaker, with a lock" },
            { value: "plug", says: "Its plug" },
            { value: "none", says: "Nothing yet" },
          ]}
        />
      )}
      {(rv || ["ev-supply", "receptacle-20", "receptacle-15", "general", "welder"].includes(run.serves)) && (
        <>
          <ChoiceField
            path={at("stands_on")}
            label="What will it be fixed to?"
            why="A post or another building wants a breaker or switch of its own."
            empty="I don’t know"
            choices={[
              { value: "same-building", says: "The building its panel is in" },
              { value: "post", says: "A post of its own" },
              { value: "other-building", says: "Another building" },
            ]}
          />
          <YesNoField
            path={at("disconnect_there")}
            label="Will a breaker or switch there turn it off?"
            why="Asked only on a post or another building. A power outlet made for vehicles often has one inside."
          />
        </>
      )}
      {rv && (
        <TextField
          path={["project", "intended_use"]}
          label="What is it for?"
          why="Towns ask whether somebody will live in the vehicle. Leave it empty if you are not sure."
          placeholder="Charging our trailer between trips; nobody lives in it here"
        />
      )}
      {run.kind === "feeder" && (
        <>
          <ChoiceField
            path={at("building")}
            label="Where does the new panel stand?"
            why="A building of its own needs a disconnect and a ground rod."
            choices={[
              { value: "detached", says: "In a separate building" },
              { value: "same", says: "In this house" },
              { value: "pedestal", says: "On a post outside" },
            ]}
          />
          <YesNoField
            path={at("disconnect")}
            label="Is there, or will there be, one switch that turns that building off?"
            why="A separate building needs one."
          />
          <YesNoField
            path={at("electrode")}
            label="Is there, or will there be, a ground rod there?"
            why="A separate building needs one. It never replaces the ground wire."
          />
          <QuantityField
            path={at("panel", "existing_load")}
            label="Load that panel carries already"
            unit="kVA"
            why="Lights and outlets that will move over to it."
            otherwise="Left empty: none."
          />
        </>
      )}
    </article>
  );
}

import { ChoiceField, NumberField, QuantityField, TextField, YesNoField } from "../field/inputs.js";
import { printPath } from "../job/document.js";
import { SERVICE_PANEL, type WrittenRun, writtenPanels, writtenRuns } from "../job/runs.js";
import { MainBreakerPicture, PanelLabelPicture } from "../pictures/panel-pictures.js";
import { planner } from "../planner.js";
import { PanelGrid } from "./panel-grid.js";

export function PanelStep() {
  const { plain } = planner();
  return (
    <>
      <p class="note">Look only: open the door, never the metal cover behind it. With the main off, the wires and lugs ahead of it are still live.</p>
      <div class="with-picture">
        <QuantityField
          path={["service", "rating"]}
          label="Size of the service"
          unit="A"
          why="It is the most the whole house may draw."
          find="The number on the handle of the main breaker. Where there is none in the panel, it is outside at the meter."
          unknown="100 A"
        />
        <MainBreakerPicture />
      </div>
      {writtenPanels(plain).map((panel) => (
        <section key={printPath(panel.path)} aria-label={panel.name} class="panel-part">
          <h3>{panel.name}</h3>
          <div class={printPath(panel.path) === printPath(SERVICE_PANEL) ? "with-picture" : ""}>
            <div>
              <QuantityField
                path={[...panel.path, "bus"]}
                label="Rating of the panel"
                unit="A"
                why="Often more than its main breaker."
                find="On the label inside the door: “MAX”, “main rating” or “bus”."
                unknown="100 A"
              />
              <QuantityField
                path={[...panel.path, "main"]}
                label="Main breaker in this panel"
                unit="A"
                find="The large breaker at the top or bottom of the panel; the number is on its handle."
                otherwise="Leave it empty where it has none."
              />
              <NumberField
                path={[...panel.path, "spaces"]}
                label="Number of spaces"
                why="Every breaker takes one; a 240 V one takes two, one above the other."
                find="Count the places for breakers, used and blank, both columns. The label says it too."
                unknown={20}
              />
            </div>
            {printPath(panel.path) === printPath(SERVICE_PANEL) && <PanelLabelPicture />}
          </div>
          <PanelGrid panel={panel} />
          {writtenRuns(plain)
            .filter((run) => printPath(run.panelPath) === printPath(panel.path))
            .map((run) => (
              <BreakerFields run={run} key={printPath(run.path)} />
            ))}
          <YesNoField
            path={[...panel.path, "working_space_clear"]}
            label="Is the space in front of it free?"
            why="30 in wide, 36 in deep and 6 ft 6 in high, nothing stored in it."
          />
        </section>
      ))}
      <details class="more">
        <summary>For the trade: fault current</summary>
        <NumberField
          path={["service", "fault_current_kA"]}
          label="Available fault current at the service"
          unit="kA"
          why="Breakers must be able to break it."
          find="The utility gives it on request."
          otherwise="Left empty: nothing is said of it."
        />
        <ChoiceField
          path={[...SERVICE_PANEL, "terminal_temperature"]}
          label="Terminals of the panel"
          empty="75 °C taken"
          choices={[
            { value: 75, says: "Marked 75 °C" },
            { value: 60, says: "60 °C" },
          ]}
        />
      </details>
    </>
  );
}

function BreakerFields({ run }: { readonly run: WrittenRun }) {
  const breaker = [...run.path, "breaker"];
  return (
    <article class="card">
      <header>
        <h4>Breaker of {run.name}</h4>
      </header>
      <div class="row">
        <QuantityField path={[...breaker, "rating"]} label="Rating" unit="A" otherwise="Left empty: computed." />
        <ChoiceField
          path={[...breaker, "poles"]}
          label="Kind"
          choices={[
            { value: 1, says: "One pole, 120 V" },
            { value: 2, says: "Two poles, 240 V" },
          ]}
        />
      </div>
      <ChoiceField
        path={[...breaker, "gfci"]}
        label="Ground-fault protection (GFCI)"
        why="It cuts the current before a shock kills."
        choices={[
          { value: true, says: "GFCI breaker" },
          { value: false, says: "Ordinary breaker" },
        ]}
      />
      <YesNoField
        path={[...breaker, "listed_for_panel"]}
        label="Is the breaker of a type that the panel’s label names?"
        why="Any other may not hold or trip."
        find="The label inside the door lists the types. The breaker’s side gives its own."
      />
      <details class="more">
        <summary>For the trade: interrupting rating</summary>
        <NumberField
          path={[...breaker, "interrupting_kA"]}
          label="Interrupting rating"
          unit="kA"
          otherwise="On the breaker: often 10 kA. Left empty: nothing is said of it."
        />
      </details>
      {run.kind === "feeder" && <TextField path={[...run.path, "name"]} label="Name of the feeder" />}
    </article>
  );
}

import { ChoiceField, NumberField, QuantityField, TextField, YesNoField } from "../field/inputs.js";
import { at, listAt, textAt } from "../job/document.js";
import { DWELLING, EXISTING, methodChosen } from "../job/house-loads.js";
import { later } from "../later.js";
import { edit, planner } from "../planner.js";

const WholeHouse = later(() => import("./whole-house.js").then((part) => part.WholeHouse));
const ManagedLoad = later(() => import("./whole-house.js").then((part) => part.ManagedLoad));
const LIST = [...EXISTING, "appliances"];
/** What stands on many labels; common practice, no source. Written as assumed until the label is read. */
const USUAL: readonly (readonly [name: string, load: string])[] = [
  ["Range", "12 kVA"],
  ["Dryer", "5 kVA"],
  ["Water heater", "4.5 kVA"],
  ["Dishwasher", "1.2 kVA"],
  ["Waste disposer", "0.9 kVA"],
  ["Microwave, built in", "1.5 kVA"],
  ["Well pump", "1.5 kVA"],
  ["Freezer on its own circuit", "0.6 kVA"],
  ["Hot tub", "7.5 kVA"],
  ["Car charger", "7.7 kVA"],
];

export function HouseStep() {
  const { plain } = planner();
  const method = textAt(plain, ["service", "load_method"]);
  // A house told by kind serves the method of the existing house too.
  const byKind =
    method === "standard" ||
    method === "optional" ||
    (method === "existing-dwelling" && at(plain, EXISTING) === undefined && at(plain, DWELLING) !== undefined);
  return (
    <>
      <ChoiceField
        path={["service", "load_method"]}
        label="How shall the house’s load be found?"
        why="The panel must carry what is there and what is new. For a house that stands, the first two are usual, and the second often leaves more room. A new house, or one whose loads are all counted anew, takes one of the others."
        put={(value) => edit(methodChosen(plain, value as Parameters<typeof methodChosen>[1], planner().assumed))}
        choices={[
          { value: "existing-dwelling", says: "Add up the house: floor area and appliances" },
          { value: "measured-demand", says: "Measured: the peak of the past year from the utility" },
          { value: "optional", says: "Count a whole house anew, by kind: optional method" },
          { value: "standard", says: "Count a whole house anew, by kind: standard method" },
        ]}
      />
      {method === "measured-demand" && (
        <section class="card" aria-labelledby="measured">
          <h3 id="measured">Measured peak</h3>
          <QuantityField
            path={["service", "measured", "peak"]}
            label="Highest demand of the year"
            unit="kVA"
            why="The new load is added to 125 % of it."
            find="Ask the utility for the interval (hourly or 15-minute) record of twelve months and take the highest kilowatts."
          />
          <ChoiceField
            path={["service", "measured", "basis"]}
            label="How long was it measured?"
            choices={[
              { value: "one-year", says: "A year, from the utility" },
              { value: "thirty-day", says: "30 days, with a recording meter" },
            ]}
          />
          <TextField
            path={["service", "measured", "from"]}
            label="Where is the record from?"
            why="The plan reviewer wants to see it."
            placeholder="The utility’s hourly record, October to September"
          />
        </section>
      )}
      {byKind && <WholeHouse />}
      {method === "existing-dwelling" && !byKind && <AddedUp />}
      <ManagedLoad />
    </>
  );
}

function AddedUp() {
  const { plain } = planner();
  const rows = listAt(plain, LIST);
  const has = (name: string) => rows.some((row) => textAt(row, ["name"]) === name);
  return (
    <>
      <QuantityField
        path={[...EXISTING, "floor_area"]}
        label="Floor area of the house"
        unit="ft2"
        why="Lights and ordinary outlets are counted by area: 3 VA for each square foot."
        find="On the tax record or the house plans. Outside measurements, all floors; leave out open porches, the garage and unfinished space that cannot be used."
        unknown="2500 ft2"
      />
      <section aria-labelledby="appliances">
        <h3 id="appliances">Appliances with a place of their own</h3>
        <p class="hint">Press those the house has. The figure is a usual one until you read the label; gas ones do not count.</p>
        <ul class="chips">
          {USUAL.filter(([name]) => !has(name)).map(([name, load]) => (
            <li key={name}>
              <button
                type="button"
                onClick={() =>
                  edit([
                    { add: { name, load }, at: LIST },
                    { at: [...LIST, rows.length, "load"], put: load, assumed: true },
                  ])
                }
              >
                + {name}
              </button>
            </li>
          ))}
          <li>
            <button
              type="button"
              onClick={() =>
                edit([
                  { add: { name: `Appliance ${rows.length + 1}`, load: "1 kVA" }, at: LIST },
                  { at: [...LIST, rows.length, "load"], put: "1 kVA", assumed: true },
                ])
              }
            >
              + Another
            </button>
          </li>
        </ul>
        {rows.map((row, i) => (
          <div class="row" key={String(i)}>
            <TextField path={[...LIST, i, "name"]} label="Appliance" />
            <QuantityField path={[...LIST, i, "load"]} label="Load" unit="kVA" />
            <button type="button" class="plain" onClick={() => edit([{ remove: [...LIST, i] }])}>
              Remove<span class="unseen"> {textAt(row, ["name"])}</span>
            </button>
          </div>
        ))}
      </section>
      <ClimateField kind="heating" label="Electric heating" asks="Does the house have electric heating that is fixed in place?" usual="10 kVA" />
      <ClimateField kind="cooling" label="Air conditioner" asks="Does the house have central air conditioning?" usual="5 kVA" />
      <details class="more">
        <summary>More about the house</summary>
        <NumberField path={[...EXISTING, "small_appliance_circuits"]} label="Kitchen counter circuits" otherwise="Left empty: 2, the least a house has." />
        <NumberField path={[...EXISTING, "laundry_circuits"]} label="Laundry circuits" otherwise="Left empty: 1." />
        <YesNoField path={[...EXISTING, "heating_or_cooling_added"]} label="Is heating or cooling added in this job?" why="The code counts more where it is." />
      </details>
    </>
  );
}

function ClimateField({
  kind,
  label,
  asks,
  usual,
}: {
  readonly kind: "heating" | "cooling";
  readonly label: string;
  readonly asks: string;
  readonly usual: string;
}) {
  const { plain } = planner();
  const path = [...EXISTING, kind];
  const there = at(plain, path) !== undefined;
  return (
    <fieldset class="field">
      <legend>{asks}</legend>
      <p class="hint">The larger of heating and cooling counts.</p>
      <div class="answer">
        <label class="radio">
          <input
            type="radio"
            name={kind}
            checked={there}
            onChange={() =>
              edit([
                { at: path, put: { name: label, load: usual } },
                { at: [...path, "load"], put: usual, assumed: true },
              ])
            }
          />
          Yes
        </label>
        <label class="radio">
          <input type="radio" name={kind} checked={!there} onChange={() => edit([{ at: path, put: undefined }])} />
          No
        </label>
      </div>
      {there && (
        <div class="row">
          <TextField path={[...path, "name"]} label="Name" />
          <QuantityField
            path={[...path, "load"]}
            label="Load"
            unit="kVA"
            find="Volts × amperes on its nameplate, in thousands. Use rated-load amperes of the compressor plus the fans."
          />
        </div>
      )}
    </fieldset>
  );
}

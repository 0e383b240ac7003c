import type { ComponentChildren } from "preact";
import { ChoiceField, NumberField, QuantityField, TextField, YesNoField } from "../field/inputs.js";
import { at, listAt, type Path, textAt } from "../job/document.js";
import { DWELLING } from "../job/house-loads.js";
import { edit, planner } from "../planner.js";

/** What stands on many labels; common practice, no source. Written as assumed until the label is read. */
type Usual = readonly (readonly [name: string, load: string, more?: Readonly<Record<string, unknown>>])[];

/** The loads of the whole house, each among its kind: the standard and the optional method count them apart. */
export function WholeHouse() {
  return (
    <>
      <p class="hint">
        A load is the volts × amperes of the label, in thousands, or its kilowatts. A figure put in by a button is a usual one, assumed until you read the
        label.
      </p>
      <QuantityField
        path={[...DWELLING, "floor_area"]}
        label="Floor area of the house"
        unit="ft2"
        why="Lights and ordinary outlets are counted by area."
        find="On the tax record or the house plans. Outside measurements, all floors; leave out open porches, the garage and unfinished space that cannot be used."
        unknown="2500 ft2"
      />
      <div class="row">
        <NumberField path={[...DWELLING, "small_appliance_circuits"]} label="Kitchen counter circuits" otherwise="Left empty: 2, the least a house has." />
        <NumberField path={[...DWELLING, "laundry_circuits"]} label="Laundry circuits" otherwise="Left empty: 1." />
      </div>
      <Rows
        list="cooking"
        title="Electric cooking"
        hint="Ranges, ovens, cooktops. Gas ones do not count."
        usual={[
          ["Range", "12 kVA"],
          ["Oven", "5 kVA"],
          ["Cooktop", "7 kVA"],
        ]}
      />
      <Rows list="dryers" title="Electric clothes dryers" hint="The code counts at least 5 kVA for each." usual={[["Dryer", "5 kVA"]]} />
      <Rows
        list="appliances"
        title="Other appliances with a place of their own"
        hint="Fastened in place, or on a circuit of their own; not cooking, drying, heating, cooling or car charging."
        usual={[
          ["Water heater", "4.5 kVA", { neutral: false }],
          ["Dishwasher", "1.2 kVA", { motor: true }],
          ["Waste disposer", "0.9 kVA", { motor: true }],
          ["Microwave, built in", "1.5 kVA"],
          ["Well pump", "1.5 kVA", { motor: true, neutral: false }],
          ["Hot tub", "7.5 kVA"],
        ]}
        more={(path) => (
          <div class="row">
            <YesNoField path={[...path, "motor"]} label="Is it a motor?" why="The largest counts a quarter more in the standard method." />
            <YesNoField path={[...path, "neutral"]} label="Does it use the neutral?" why="One of 240 V alone does not. I don’t know counts it." />
          </div>
        )}
      />
      <Rows
        list="ev"
        title="Car chargers there already"
        hint="Those of this job are counted by themselves."
        usual={[["Car charger", "7.7 kVA"]]}
        unread="Left empty: 7.2 kVA, the least the code counts."
      />
      <Rows
        list="climate"
        title="Heating and cooling by electricity"
        hint="Each unit by its kind; the code counts them differently."
        usual={[
          ["Air conditioner", "5 kVA", { kind: "cooling" }],
          ["Heat pump", "5 kVA", { kind: "heat-pump" }],
          ["Electric baseboard heat", "10 kVA", { kind: "space-heating" }],
        ]}
        counted={false}
        kinds={(path) => <Climate path={path} />}
      />
    </>
  );
}

function Rows({
  list,
  title,
  hint,
  usual,
  unread,
  kinds,
  more,
  counted = true,
}: {
  readonly list: string;
  readonly title: string;
  readonly hint: string;
  readonly usual: Usual;
  /** What an empty load means, where the job may leave it out. */
  readonly unread?: string;
  /** What is always asked of a row, and what only few need. */
  readonly kinds?: (path: Path) => ComponentChildren;
  readonly more?: (path: Path) => ComponentChildren;
  /** Whether a row may stand for several alike. */
  readonly counted?: boolean;
}) {
  const path = [...DWELLING, list];
  const rows = listAt(planner().plain, path);
  const add = (name: string, load: string, given: Readonly<Record<string, unknown>> = {}) =>
    edit([
      { add: { name, ...given, load }, at: path },
      { at: [...path, rows.length, "load"], put: load, assumed: true },
    ]);
  return (
    <section aria-labelledby={`house-${list}`}>
      <h3 id={`house-${list}`}>{title}</h3>
      <p class="hint">{hint}</p>
      {rows.map((row, i) => (
        <article class="card tight" key={String(i)}>
          <div class="row">
            <TextField path={[...path, i, "name"]} label="Called" />
            <QuantityField path={[...path, i, "load"]} label="Load" unit="kVA" otherwise={unread} />
            <button type="button" class="plain" onClick={() => edit([{ remove: [...path, i] }])}>
              Remove<span class="unseen"> {textAt(row, ["name"])}</span>
            </button>
          </div>
          {kinds?.([...path, i])}
          {counted && (
            <details class="more">
              <summary>
                More<span class="unseen"> about {textAt(row, ["name"])}</span>
              </summary>
              <NumberField path={[...path, i, "count"]} label="How many alike" otherwise="Left empty: one." />
              {more?.([...path, i])}
            </details>
          )}
        </article>
      ))}
      <ul class="chips">
        {usual.map(([name, load, given]) => (
          <li key={name}>
            <button type="button" onClick={() => add(rows.some((row) => textAt(row, ["name"]) === name) ? `${name} ${rows.length + 1}` : name, load, given)}>
              + {name}
            </button>
          </li>
        ))}
        {list === "appliances" && (
          <li>
            <button type="button" onClick={() => add(`Appliance ${rows.length + 1}`, "1 kVA")}>
              + Another
            </button>
          </li>
        )}
      </ul>
    </section>
  );
}

function Climate({ path }: { readonly path: Path }) {
  const kind = textAt(planner().plain, [...path, "kind"]);
  return (
    <>
      <ChoiceField
        path={[...path, "kind"]}
        label="Kind"
        choices={[
          { value: "cooling", says: "Air conditioner" },
          { value: "heat-pump", says: "Heat pump" },
          { value: "space-heating", says: "Electric heat of rooms" },
          { value: "thermal-storage", says: "Heat stored for later" },
        ]}
        put={(value) =>
          edit([
            { at: [...path, "kind"], put: value },
            ...(value === "heat-pump" ? [] : ["supplement", "interlocked"].map((key) => ({ at: [...path, key], put: undefined }))),
            ...(value === "space-heating" ? [] : [{ at: [...path, "controls"], put: undefined }]),
          ])
        }
      />
      {kind === "heat-pump" && (
        <div class="row">
          <QuantityField
            path={[...path, "supplement"]}
            label="Its electric heat"
            unit="kVA"
            find="On the air handler’s label, as a heat kit."
            otherwise="Left empty: none."
          />
          <YesNoField path={[...path, "interlocked"]} label="Is it made so that pump and electric heat cannot run together?" why="Then the larger counts." />
        </div>
      )}
      {kind === "space-heating" && (
        <NumberField
          path={[...path, "controls"]}
          label="Thermostats"
          why="Four or more separately controlled units count less in the optional method."
          otherwise="Left empty: one."
        />
      )}
    </>
  );
}

/** New loads held back by a system that watches the whole: any method may have one. */
export function ManagedLoad() {
  const path = ["service", "managed"] as const;
  const there = at(planner().plain, path) !== undefined;
  return (
    <details class="more" open={there}>
      <summary>Does a load management system hold the new loads back?</summary>
      <p class="hint">A listed system that keeps the new loads together below a set current. Leave it empty where there is none.</p>
      {there ? (
        <>
          <QuantityField
            path={[...path, "setpoint"]}
            label="Amperes it lets the new loads draw together"
            unit="A"
            find="Its setting, as the installer locked it; at 240 V."
          />
          <TextField
            path={[...path, "citation"]}
            label="What shows it?"
            why="The reviewer asks for the listing and how the setting is guarded."
            placeholder="Listing and instructions of the system; setting behind a locked cover"
          />
          <button type="button" class="plain" onClick={() => edit([{ remove: [...path] }])}>
            There is none<span class="unseen">: load management</span>
          </button>
        </>
      ) : (
        <button type="button" onClick={() => edit([{ at: path, put: {} }])}>
          Yes, there is one
        </button>
      )}
    </details>
  );
}

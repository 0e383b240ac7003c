import { useState } from "preact/hooks";
import { ChoiceField, QuantityField, TextField, YesNoField } from "../field/inputs.js";
import { at, listAt, type Path, printPath, textAt } from "../job/document.js";
import { EARTH_MOVEMENTS, GROUND_OVER, METHODS, PLACES, ROUTES } from "../job/routes.js";
import { type WrittenRun, writtenRuns } from "../job/runs.js";
import { nameTaken, renamingStretch, replacingRoute, takingOutStretch } from "../job/taking-out.js";
import { RoutePicture } from "../pictures/route-picture.js";
import { edit, planner } from "../planner.js";

const BOX_TYPES = [
  { volume: "18 in3", says: "Plastic one-gang, 18 in³" },
  { volume: "30.3 in3", says: "4 × 4 × 2-1/8 in metal, 30.3 in³" },
  { volume: "42 in3", says: "4-11/16 × 2-1/8 in metal, 42 in³" },
  { volume: "64 in3", says: "4 × 4 × 4 in junction box, 64 in³" },
  { volume: "100 in3", says: "5 × 5 × 4 in or an outlet enclosure, 100 in³" },
  { volume: "220 in3", says: "Large pull box, 220 in³" },
] as const;

export function RouteStep() {
  const { plain } = planner();
  const runs = writtenRuns(plain);
  const [chosen, setChosen] = useState(0);
  const run = runs[chosen] ?? runs[0];
  if (run === undefined) return <p class="note">First pick what will be connected, on step 1.</p>;
  return (
    <>
      {runs.length > 1 && (
        <div class="field">
          <label for="route-of">Route of</label>
          <select id="route-of" value={String(runs.indexOf(run))} onChange={(event) => setChosen(Number(event.currentTarget.value))}>
            {runs.map((each, i) => (
              <option value={String(i)} key={printPath(each.path)}>
                {each.name}
              </option>
            ))}
          </select>
        </div>
      )}
      <RouteOf run={run} key={printPath(run.path)} />
    </>
  );
}

function RouteOf({ run }: { readonly run: WrittenRun }) {
  const { plain } = planner();
  const route = [...run.path, "route"];
  const boxes = [...run.path, "boxes"];
  const stretches = listAt(plain, route);
  return (
    <>
      <section aria-labelledby="start-route">
        <h3 id="start-route">Which way does it go?</h3>
        <p class="hint">Press the picture that is nearest to yours; it writes the stretches and boxes below. Then measure each stretch.</p>
        <ul class="things">
          {ROUTES.map((start) => (
            <li key={start.key}>
              <button
                type="button"
                aria-pressed={start.route.map(({ name }) => name).join("\n") === stretches.map((row) => textAt(row, ["name"])).join("\n")}
                onClick={() => {
                  const { edits, says } = replacingRoute(
                    plain,
                    run,
                    start.route.map(({ name }) => String(name)),
                  );
                  edit(
                    [
                      { at: route, put: structuredClone(start.route) },
                      { at: boxes, put: structuredClone(run.kind === "feeder" ? start.boxes.filter((box) => box.device !== true) : start.boxes) },
                      ...edits,
                    ],
                    "",
                    says,
                  );
                }}
              >
                <RoutePicture of={start.key} />
                <b>{start.says}</b>
                <span>{start.tells}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="stretches">
        <h3 id="stretches">Stretch by stretch, from the panel on</h3>
        {stretches.map((_, i) => (
          <Stretch path={[...route, i]} index={i} count={stretches.length} run={run} key={String(i)} />
        ))}
        <button type="button" onClick={() => edit([{ add: { name: nameFree(stretches), place: "indoors", method: "NM-B" }, at: route }])}>
          Add a stretch
        </button>
      </section>
      <details class="more">
        <summary>Boxes ({listAt(plain, boxes).length}): set for this way already; open to change</summary>
        <p class="hint">Where a cable ends, where wires join, and the one that holds the outlet. Big boxes are kinder to work in.</p>
        {listAt(plain, boxes).map((_, i) => (
          <BoxFields path={[...boxes, i]} route={stretches} key={String(i)} />
        ))}
        <button
          type="button"
          onClick={() =>
            edit([{ add: { name: `Box ${listAt(plain, boxes).length + 1}`, after: textAt(stretches.at(-1), ["name"]), volume: "64 in3" }, at: boxes }])
          }
        >
          Add a box
        </button>
      </details>
    </>
  );
}

function nameFree(stretches: readonly unknown[]): string {
  const names = stretches.map((each) => textAt(each, ["name"]));
  for (let i = stretches.length + 1; ; i++) if (!names.includes(`Stretch ${i}`)) return `Stretch ${i}`;
}

function Stretch({ path, index, count, run }: { readonly path: Path; readonly index: number; readonly count: number; readonly run: WrittenRun }) {
  const { plain, digest } = planner();
  const place = textAt(plain, [...path, "place"]);
  const method = textAt(plain, [...path, "method"]);
  const name = textAt(plain, [...path, "name"]);
  const cable = method === "NM-B" || method === "UF-B";
  const bends = listAt(plain, [...path, "bends"]);
  const designed = digest?.runs.find((each) => printPath(each.path) === printPath(run.path))?.segments.find((each) => each.name === name);
  const list = path.slice(0, -1);
  const takeOut = () => {
    const { edits, says } = takingOutStretch(plain, run, index);
    edit(edits, "", says);
  };
  const swap = () => {
    const rows = [...listAt(plain, list)];
    [rows[index - 1], rows[index]] = [rows[index], rows[index - 1]];
    edit([{ at: list, put: rows }]);
  };
  const fromGround = [index - 1, index + 1].some((other) => at(plain, [...list, other, "place"]) === "buried");
  return (
    <article class="card">
      <header>
        <h4>
          {index + 1}. {name || "Stretch"}
        </h4>
        {designed && (
          <p class="hint">
            {designed.wire}, ground {designed.grounding}
            {designed.tradeSize ? `, ${designed.tradeSize} in ${method}` : ""} ({designed.chosen === "given" ? "as given" : "computed"})
          </p>
        )}
        {index > 0 && (
          <button type="button" class="plain" onClick={swap}>
            Move up<span class="unseen"> {name}</span>
          </button>
        )}
        {count > 1 && (
          <button type="button" class="plain" onClick={takeOut}>
            Remove<span class="unseen"> {name}</span>
          </button>
        )}
      </header>
      <div class="row">
        <TextField
          path={[...path, "name"]}
          label="Called"
          also={(value) => renamingStretch(plain, run, name, value)}
          refuses={(value) => (nameTaken(plain, run, index, value) ? "Another stretch is called so; type on, or choose another name." : null)}
        />
        <QuantityField
          path={[...path, "length"]}
          label="Length"
          unit="ft"
          find="Measure along the way the wire goes, rises and drops counted. A pace is about 2.5 ft; use a tape before you buy."
          unknown={place === "buried" ? "50 ft" : place === "outdoors" ? "8 ft" : "40 ft"}
        />
      </div>
      <div class="row">
        <ChoiceField
          path={[...path, "place"]}
          label="Where"
          choices={PLACES}
          put={(value) =>
            edit([
              { at: [...path, "place"], put: value },
              ...(value === "buried" && at(plain, [...path, "cover"]) === undefined
                ? [{ at: [...path, "cover"], put: "18 in" }]
                : value !== "buried"
                  ? [
                      { at: [...path, "cover"], put: undefined },
                      { at: [...path, "over"], put: undefined },
                    ]
                  : []),
            ])
          }
        />
        <ChoiceField path={[...path, "method"]} label="In what" choices={METHODS} />
      </div>
      {place === "buried" && (
        <div class="row">
          <QuantityField
            path={[...path, "cover"]}
            label="Earth above it"
            unit="in"
            why={designed?.leastCover ? `At least ${designed.leastCover} in here.` : "From its top to the finished ground."}
          />
          <ChoiceField path={[...path, "over"]} label="What is above?" empty="I don’t know: lawn taken" choices={GROUND_OVER} />
        </div>
      )}
      {!cable && (
        <div class="field">
          <label for={`bends-${printPath(path)}`}>Quarter bends (90°)</label>
          <p class="hint">More than four between two boxes is not allowed.</p>
          <select
            id={`bends-${printPath(path)}`}
            value={bends.every((bend) => bend === 90) ? String(bends.length) : "other"}
            onChange={(event) => edit([{ at: [...path, "bends"], put: Array.from({ length: Number(event.currentTarget.value) }, () => 90) }])}
          >
            {["0", "1", "2", "3", "4", "5"].map((number) => (
              <option key={number}>{number}</option>
            ))}
            {bends.some((bend) => bend !== 90) && <option value="other">{bends.join("°, ")}° as in the file</option>}
          </select>
        </div>
      )}
      {place === "outdoors" && (
        <YesNoField path={[...path, "exposed_to_damage"]} label="Can a car, mower or ladder strike it?" why="Then it needs thick-wall or steel raceway." />
      )}
      {place === "outdoors" && fromGround && (
        <ChoiceField
          path={[...path, "earth_movement"]}
          label="What gives when the ground settles or frost lifts it?"
          why="A raceway held fast at the wall is pulled out of its box."
          empty="I don’t know"
          choices={EARTH_MOVEMENTS}
        />
      )}
      <details class="more">
        <summary>For the trade: sizes, warmth, other wires</summary>
        <div class="row">
          <ChoiceField
            path={[...path, "conductors", "size"]}
            label="Wire size"
            empty="Compute it"
            choices={SIZES.map((size) => ({ value: size, says: `${size}${size.length < 3 ? " AWG" : size.includes("/") ? " AWG" : " kcmil"}` }))}
          />
          <ChoiceField
            path={[...path, "conductors", "grounding"]}
            label="Ground wire size"
            empty="Compute it"
            choices={SIZES.map((size) => ({ value: size, says: size }))}
          />
        </div>
        <div class="row">
          <ChoiceField
            path={[...path, "conductors", "material"]}
            label="Metal"
            empty="Copper"
            choices={[
              { value: "copper", says: "Copper" },
              { value: "aluminum", says: "Aluminum" },
            ]}
          />
          {!cable && (
            <ChoiceField
              path={[...path, "trade_size"]}
              label="Raceway trade size"
              empty="Compute it"
              choices={["1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3"].map((size) => ({ value: size, says: `${size} in` }))}
            />
          )}
        </div>
        <TextField path={[...path, "ambient"]} label="Hottest air around it" placeholder="104 °F" why="Heat makes a wire carry less." />
      </details>
    </article>
  );
}
const SIZES = ["14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0"];

function BoxFields({ path, route }: { readonly path: Path; readonly route: readonly unknown[] }) {
  const { plain } = planner();
  const name = textAt(plain, [...path, "name"]);
  const volume = textAt(plain, [...path, "volume"]);
  const listed = BOX_TYPES.some((box) => box.volume === volume);
  return (
    <article class="card">
      <header>
        <h4>{name || "Box"}</h4>
        <button type="button" class="plain" onClick={() => edit([{ remove: path }])}>
          Remove<span class="unseen"> {name}</span>
        </button>
      </header>
      <div class="row">
        <TextField path={[...path, "name"]} label="Called" />
        <ChoiceField
          path={[...path, "after"]}
          label="At the end of"
          choices={route.map((each) => ({ value: textAt(each, ["name"]), says: textAt(each, ["name"]) }))}
        />
      </div>
      {listed || volume === "" ? (
        <ChoiceField
          path={[...path, "volume"]}
          label="Box"
          choices={[...BOX_TYPES.map((box) => ({ value: box.volume, says: box.says })), { value: "50 in3", says: "Another size" }]}
        />
      ) : (
        <QuantityField
          path={[...path, "volume"]}
          label="Its volume"
          unit="in3"
          find="Stamped inside plastic boxes; for metal boxes in the maker’s sheet."
          unknown="30.3 in3"
        />
      )}
      <div class="row">
        <YesNoField path={[...path, "wet_location"]} label="Marked for wet places?" />
        <YesNoField path={[...path, "device"]} label="Holds the outlet?" />
      </div>
    </article>
  );
}

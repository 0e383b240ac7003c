import { SITE_POINTS } from "@branchwork/sheets";
import { ChoiceField, QuantityField, TextField, useTyped, YesNoField } from "../field/inputs.js";
import { type Path, printPath, textAt } from "../job/document.js";
import { bareLength, feetOf, type LengthUnit, snapped } from "../job/length-text.js";
import { withUnit } from "../job/unit-text.js";
import { edit, planner } from "../planner.js";
import type { Chosen } from "./site-canvas.js";
import { isClosed, leastCorners, OUTLINES, type Place, type SiteThing } from "./site-model.js";

/** The thing at hand: its name, its kind, and every place of it as numbers. */
export function ThingCard({
  thing,
  unit,
  remove,
  insert,
}: {
  readonly thing: SiteThing;
  readonly unit: LengthUnit;
  readonly remove: (chosen: Chosen) => void;
  readonly insert: (before: number, place: Place) => void;
}) {
  const { issues } = planner();
  const whole = thing.list === null ? null : printPath(thing.list);
  const wrong = issues.filter((issue) => issue.of === "job" && (issue.path === thing.key || issue.path === whole));
  const free = thing.corners.length > leastCorners(thing);
  return (
    <article class="card site-thing">
      <header>
        <h3>{thing.name}</h3>
        {thing.is !== "lot" && (
          <button type="button" class="plain" onClick={() => remove({ key: thing.key, corner: null })}>
            Take it off the plan<span class="unseen">: {thing.name}</span>
          </button>
        )}
      </header>
      {(thing.is === "outline" || thing.is === "point") && (
        <div class="row">
          <TextField path={[...thing.path, "name"]} label="Called" />
          <ChoiceField
            path={[...thing.path, "kind"]}
            label="Kind"
            choices={Object.entries(thing.is === "point" ? SITE_POINTS : OUTLINES).map(([value, says]) => ({
              value,
              says: says.charAt(0).toUpperCase() + says.slice(1),
            }))}
          />
        </div>
      )}
      {thing.is === "route" && (
        <>
          <YesNoField path={[...thing.path, "in_trench"]} label="Is it in a trench here?" />
          <QuantityField
            path={[...thing.path, "rises"]}
            label="Rises and drops along it"
            unit={unit}
            why="Up and down a wall, into the ground and out of it: a plan from above cannot show them."
            otherwise="Left empty: none."
          />
        </>
      )}
      {wrong.map((issue) => (
        <p class="wrong" key={issue.what}>
          <b>{issue.what}.</b> {issue.mend}
        </p>
      ))}
      <div class="corners">
        {thing.places.map((path, i) => (
          <fieldset class="field" key={String(i)}>
            <legend>{thing.list === null ? "Place" : `Corner ${i + 1}`}</legend>
            <div class="answer">
              <Coordinate path={[...path, 0]} says="Across" of={thing} corner={i} unit={unit} />
              <Coordinate path={[...path, 1]} says="Up" of={thing} corner={i} unit={unit} />
              {free && (
                <button type="button" class="plain" onClick={() => remove({ key: thing.key, corner: i })}>
                  Take out<span class="unseen"> corner {i + 1}</span>
                </button>
              )}
            </div>
          </fieldset>
        ))}
      </div>
      {thing.list !== null && (
        <button
          type="button"
          onClick={() => {
            const last = thing.corners.at(-1) ?? [0, 0];
            const next = isClosed(thing) ? (thing.corners[0] ?? [0, 0]) : null;
            insert(
              thing.corners.length,
              next === null ? [last[0] + 10, last[1]] : [snapped((last[0] + next[0]) / 2, unit), snapped((last[1] + next[1]) / 2, unit)],
            );
          }}
        >
          Add a corner at the end
        </button>
      )}
    </article>
  );
}

/** One number of a place. A unit typed with it is kept. */
function Coordinate({
  path,
  says,
  of,
  corner,
  unit,
}: {
  readonly path: Path;
  readonly says: string;
  readonly of: SiteThing;
  readonly corner: number;
  readonly unit: LengthUnit;
}) {
  const key = printPath(path);
  const { plain, issues } = planner();
  const stored = textAt(plain, path);
  // While it is dragged the place is not in the file yet.
  const feet = of.corners[corner]?.[path.at(-1) as 0 | 1] ?? feetOf(stored);
  const typed = useTyped(feet === null ? stored : bareLength(feet, unit), (value) => {
    const put = withUnit(value, unit);
    if (put !== "") edit([{ at: path, put }], key);
  });
  const wrong = issues.filter((issue) => issue.of === "job" && issue.path === key);
  const name = of.list === null ? of.name : `corner ${corner + 1} of ${of.name}`;
  return (
    <span class="coordinate">
      <label for={`field-${key}`}>
        {says}
        <span class="unseen">, {name}</span>
      </label>{" "}
      <span class="quantity">
        <input
          id={`field-${key}`}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          aria-invalid={wrong.length > 0}
          aria-describedby={wrong.length > 0 ? `field-${key}-wrong` : undefined}
          {...typed}
        />
        <span class="unit">{unit}</span>
      </span>
      {wrong.map((issue) => (
        <span class="wrong" id={`field-${key}-wrong`} key={issue.what}>
          <b>{issue.what}.</b> {issue.mend}
        </span>
      ))}
    </span>
  );
}

import { compareRoutes } from "@branchwork/sheets";
import type { Edit } from "../job/document.js";
import { printPath } from "../job/document.js";
import { type LengthUnit, shownLength } from "../job/length-text.js";
import { edit, planner } from "../planner.js";
import { lengthTaken, type Stretch, stretches, wayDrawn } from "./site-edits.js";
import { placesOf, type SiteThing } from "./site-model.js";

const VERDICTS = {
  agrees: "agrees",
  "stated-shorter": "the job says less than the plan",
  "stated-longer": "the job says more than the plan",
  "not-stated": "the job has no length yet",
  "not-drawn": "not drawn",
} as const;

/** Every stretch of the job: its length by the plan beside the one its wire is computed with. Follows a drag. */
export function WayLengths({
  things,
  unit,
  added,
}: {
  readonly things: readonly SiteThing[];
  readonly unit: LengthUnit;
  readonly added: (edits: readonly Edit[]) => void;
}) {
  const { plain } = planner();
  const all = stretches(plain);
  const compared = compareRoutes(
    things
      .filter(({ is }) => is === "route")
      .map((thing) => ({ circuit: thing.circuit, segment: thing.segment, in_trench: thing.buried, points: placesOf(thing), rises_ft: thing.rises })),
    all.flatMap(({ run, name, feet }) => (feet === null ? [] : [{ circuit: run.id, segment: name, length_ft: feet }])),
  );
  const said = (feet: number | null) => (feet === null ? "none" : shownLength(feet, unit));
  const rowOf = (stretch: Stretch) => {
    const row = compared.find((each) => each.circuit === stretch.run.id && each.segment === stretch.name);
    const drawn = row === undefined || row.drawn_ft === null ? null : row.drawn_ft + row.rises_ft;
    return { drawn, verdict: row === undefined ? "not drawn, no length yet" : VERDICTS[row.verdict], agrees: row?.verdict === "agrees" };
  };
  const apart = all.filter((stretch) => {
    const { drawn, agrees } = rowOf(stretch);
    return drawn !== null && !agrees;
  });
  return (
    <section aria-labelledby="way-lengths">
      <h3 id="way-lengths">The way of the wire, by the plan and by the job</h3>
      {all.length === 0 && <p class="hint">The job has no way yet: step 4 writes it.</p>}
      {all.length > 0 && (
        <table class="figures ways">
          <thead>
            <tr>
              <th scope="col">Stretch</th>
              <th scope="col">Plan</th>
              <th scope="col">Job</th>
              <th scope="col">What to do</th>
            </tr>
          </thead>
          <tbody>
            {all.map((stretch) => {
              const { drawn, verdict, agrees } = rowOf(stretch);
              return (
                <tr key={printPath(stretch.path)}>
                  <th scope="row">
                    {stretch.name} <span class="hint">{stretch.run.name}</span>
                  </th>
                  <td>{said(drawn)}</td>
                  <td>{said(stretch.feet)}</td>
                  <td>
                    {verdict}{" "}
                    {drawn === null ? (
                      <button type="button" onClick={() => added(wayDrawn(plain, stretch, unit))}>
                        Draw its way<span class="unseen">: {stretch.name}</span>
                      </button>
                    ) : (
                      !agrees && (
                        <button type="button" onClick={() => edit(lengthTaken(stretch, drawn, unit))}>
                          Take the plan’s length<span class="unseen"> for {stretch.name}</span>
                        </button>
                      )
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {apart.length > 1 && (
        <button type="button" onClick={() => edit(apart.flatMap((stretch) => lengthTaken(stretch, rowOf(stretch).drawn ?? 0, unit)))}>
          Take the plan’s lengths for all that differ
        </button>
      )}
      <p class="hint">
        Rises and drops, which a plan from above cannot show, are added where you told them of the way. More slack in the wire than drawn is usual.
      </p>
    </section>
  );
}

import { type Edit, listAt, textAt } from "../job/document.js";
import { edit, planner } from "../planner.js";
import type { ShownAlternative } from "../work/choosing.js";
import type { ShownRun } from "../work/digest.js";

/** How many dearer wires than the present one are of use to anybody. */
const MOST_SHOWN = 8;

/** For each pull, the other wires that are lawful there, each one press away. */
export function OtherWires({ run, ways, currency }: { readonly run: ShownRun; readonly ways: readonly ShownAlternative[]; readonly currency: string }) {
  const { plain } = planner();
  const pulls = [...new Set(ways.map(({ segments }) => segments.join(", ")))];
  return (
    <>
      {pulls.map((pull) => {
        const rows = ways.filter(({ segments }) => segments.join(", ") === pull).slice(0, MOST_SHOWN);
        return (
          <table class="figures" key={pull}>
            <caption>Also lawful in {pull}</caption>
            <thead>
              <tr>
                <th scope="col">Wire</th>
                <th scope="col">Raceway</th>
                <th scope="col">Drop</th>
                <th scope="col">{currency}</th>
                <th scope="col">
                  <span class="unseen">Take it</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((way) => (
                <tr key={way.wire}>
                  <th scope="row">{way.wire}</th>
                  <td>{way.tradeSizes === "" ? "cable" : `${way.tradeSizes} in`}</td>
                  <td>{Math.round(Number(way.dropPercent) * 10) / 10} %</td>
                  <td>{way.cost === null ? "no price" : Math.round(Number(way.cost))}</td>
                  <td>
                    {way.chosen ? (
                      "now"
                    ) : (
                      <button type="button" class="link" onClick={() => edit(pullEdits(plain, run, way))}>
                        Take<span class="unseen"> {`${way.wire} in ${pull}`}</span>
                      </button>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        );
      })}
    </>
  );
}

function pullEdits(plain: unknown, run: ShownRun, { segments, material, size }: ShownAlternative): readonly Edit[] {
  const route = [...run.path, "route"];
  return listAt(plain, route).flatMap((row, i): Edit[] =>
    segments.includes(textAt(row, ["name"]))
      ? [
          { at: [...route, i, "conductors", "material"], put: material },
          { at: [...route, i, "conductors", "size"], put: size },
        ]
      : [],
  );
}

import { useState } from "preact/hooks";
import { QuantityField, TextField } from "../field/inputs.js";
import { at, type Edit, listAt, printPath } from "../job/document.js";
import { freeSpaces, occupied, type WrittenPanel, writtenRuns } from "../job/runs.js";
import { edit, planner } from "../planner.js";

/** The panel's spaces, odd left and even right as in the panel. A press on a space marks what was picked above it. */
export function PanelGrid({ panel }: { readonly panel: WrittenPanel }) {
  const { plain, issues } = planner();
  const runs = writtenRuns(plain).filter((run) => printPath(run.panelPath) === printPath(panel.path));
  const [mark, setMark] = useState("existing-1");
  if (panel.spaces === 0) return <p class="note">Give the number of spaces and the panel appears here.</p>;
  const taken = new Map(occupied(plain, panel.path).map((each) => [each.space, each]));
  const directory = [...panel.path, "directory"];
  const run = runs[Number(mark)];
  const poles = run ? (at(plain, [...run.path, "breaker", "poles"]) === 1 ? 1 : 2) : mark === "existing-2" ? 2 : 1;
  const place = (space: number) => {
    const wanted = poles === 2 ? [space, space + 2] : [space];
    if (run) edit([{ at: [...run.path, "breaker", "spaces"], put: wanted }]);
    else edit([{ add: { space, ...(poles === 2 ? { poles } : {}), serves: "Not labelled" }, at: directory }]);
  };
  const press = (space: number) => {
    const there = taken.get(space);
    if (there === undefined) place(space);
    else if (there.now) document.getElementById(`field-${printPath([...there.path, "serves"])}`)?.focus();
  };
  const name = `mark-${printPath(panel.path)}`;
  const radio = (value: string, says: string) => (
    <label class="radio" key={value}>
      <input type="radio" name={name} checked={mark === value} onChange={() => setMark(value)} />
      {says}
    </label>
  );
  const rows = Array.from({ length: Math.ceil(panel.spaces / 2) }, (_, i) => [2 * i + 1, 2 * i + 2]);
  const wanting = runs.filter((each) => issues.some((issue) => issue.path.startsWith(printPath([...each.path, "breaker", "spaces"]))));
  return (
    <>
      <fieldset class="field">
        <legend>What do you mark?</legend>
        <p class="hint">
          First press the spaces below that have a breaker already. Then pick “New” and choose its space. A 240 V breaker takes the pressed space and the one
          below it.
        </p>
        <div class="answer">
          {radio("existing-1", "There already, one space")}
          {radio("existing-2", "There already, two spaces")}
          {runs.map((each, i) => radio(String(i), `New: ${each.name}`))}
        </div>
        {run && (
          <button
            type="button"
            onClick={() => {
              const free = freeSpaces(plain, panel.path, poles, printPath(run.path));
              if (free.length > 0) edit([{ at: [...run.path, "breaker", "spaces"], put: [...free] }]);
            }}
          >
            Choose free spaces for {run.name}
          </button>
        )}
        {wanting.map((each) => (
          <p class="wrong" id={`field-${printPath([...each.path, "breaker", "spaces"])}`} tabIndex={-1} key={each.id}>
            <b>Wanted.</b> Press a free space for {each.name}.
          </p>
        ))}
      </fieldset>
      <table class="spaces">
        <caption>Spaces of {panel.name}</caption>
        <tbody>
          {rows.map((pair) => (
            <tr key={String(pair[0])}>
              {pair.map((space) => {
                const there = taken.get(space);
                if (space > panel.spaces) return <td key={String(space)} />;
                const says = there === undefined ? "free" : there.says;
                return (
                  <td key={String(space)}>
                    <button type="button" class={there === undefined ? "free" : there.now ? "taken" : "fresh"} onClick={() => press(space)}>
                      <span class="unseen">Space </span>
                      <span class="number">{space}</span>
                      <span class="unseen">: </span>
                      <span>{there && !there.now ? `NEW ${says}` : says}</span>
                    </button>
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <details class="more" open={listAt(plain, directory).length > 0 && listAt(plain, directory).length < 4}>
        <summary>Directory: what each breaker serves ({listAt(plain, directory).length})</summary>
        {listAt(plain, directory).map((row, i) => (
          <div class="row" key={String(i)}>
            <TextField path={[...directory, i, "serves"]} label={`Space ${String(at(row, ["space"]))} serves`} />
            <QuantityField path={[...directory, i, "rating"]} label="Breaker" unit="A" />
            <button type="button" class="plain" onClick={() => edit([{ remove: [...directory, i] } satisfies Edit])}>
              Remove<span class="unseen"> space {String(at(row, ["space"]))}</span>
            </button>
          </div>
        ))}
      </details>
    </>
  );
}

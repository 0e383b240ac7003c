import { useState } from "preact/hooks";
import { parseDocument } from "yaml";
import { ChoiceField, YesNoField } from "../field/inputs.js";
import { textAt } from "../job/document.js";
import { download, readChosenFile } from "../paper/files.js";
import { chooseOverlay, planner } from "../planner.js";

export function TownStep() {
  const { shipped, overlay, issues } = planner();
  const known = shipped.findIndex((each) => each.text === overlay?.text);
  const wrong = issues.filter((issue) => issue.of === "overlay");
  const [refused, setRefused] = useState("");
  const ofTown = overlay === null ? null : textAt(parsed(overlay.text), ["edition"]) || null;
  return (
    <>
      <ChoiceField
        path={["code", "edition"]}
        label="Edition of the electrical code"
        why="Rules differ by edition. The town decides which is in force."
        find="Ask the building department: “Which edition of the NEC do you enforce, and with which amendments?”"
        unknown="2023"
        otherwise={ofTown === null ? undefined : `The town’s file names the ${ofTown} edition, and that one is used.`}
        choices={["2017", "2020", "2023", "2026"].map((edition) => ({ value: edition, says: edition }))}
      />
      <YesNoField path={["code", "confirmed_with_authority"]} label="Has the building department confirmed it?" />
      <div class="field">
        <label for="overlay">Rules of the town</label>
        <p class="hint">
          A file can hold what a town asks beyond the code: fees, forms, visits, changed rules. Those listed are samples of places that do not exist; write or
          open your own.
        </p>
        <select
          id="overlay"
          value={overlay === null ? "-1" : known >= 0 ? String(known) : "own"}
          onChange={(event) => {
            const chosen = shipped[Number(event.currentTarget.value)];
            chooseOverlay(chosen === undefined ? null : { name: chosen.id, text: chosen.text });
          }}
        >
          <option value="-1">I don’t know: the code alone</option>
          {shipped.map((each, i) => (
            <option value={String(i)} key={each.id}>
              {each.name}
              {each.id.startsWith("base") ? "" : " (invented sample)"}
            </option>
          ))}
          {overlay !== null && known < 0 && <option value="own">{overlay.name} (your file)</option>}
        </select>
        <p>
          <label class="button">
            Open a town’s file
            <input
              type="file"
              accept=".yaml,.yml,.json"
              class="unseen"
              onChange={async (event) => {
                const read = await readChosenFile(event.currentTarget);
                setRefused(read !== null && "refused" in read ? read.refused : "");
                if (read !== null && "text" in read) chooseOverlay({ name: read.name, text: read.text });
              }}
            />
          </label>{" "}
          {overlay !== null && (
            <button type="button" onClick={() => download(`${overlay.name.replace(/\.ya?ml$/, "")}.yaml`, overlay.text, "application/yaml")}>
              Save the town’s file
            </button>
          )}
        </p>
        {refused && <p class="wrong">{refused}</p>}
        {wrong.map((issue) => (
          <p class="wrong" key={issue.what}>
            <b>Line {issue.line}:</b> {issue.what}. {issue.mend}
          </p>
        ))}
      </div>
      {overlay !== null && <OverlayNotes key={overlay.name} />}
    </>
  );
}

function OverlayNotes() {
  const overlay = planner().overlay!;
  const [says, setSays] = useState("");
  const [citation, setCitation] = useState("");
  const plain = parsed(overlay.text);
  const count = Array.isArray(plain?.notes) ? plain.notes.length : 0;
  return (
    <section class="card" aria-labelledby="town-notes">
      <h3 id="town-notes">What this town says</h3>
      <ul>
        {(Array.isArray(plain?.notes) ? plain.notes : []).map((note: unknown, i: number) => (
          <li key={String(i)}>
            {textAt(note, ["says"])} <span class="hint">{textAt(note, ["citation"])}</span>
          </li>
        ))}
        {count === 0 && <li>No notes yet.</li>}
      </ul>
      <div class="field">
        <label for="note-says">Add a note</label>
        <textarea id="note-says" rows={2} value={says} onInput={(event) => setSays(event.currentTarget.value)} />
        <label for="note-citation">Where it says so (ordinance, page, who told you and when)</label>
        <input id="note-citation" type="text" value={citation} onInput={(event) => setCitation(event.currentTarget.value)} />
        <button
          type="button"
          disabled={says.trim() === "" || citation.trim() === ""}
          onClick={() => {
            const document = parseDocument(overlay.text);
            const note = document.createNode({ id: `note-${Date.now().toString(36)}`, says: says.trim(), citation: citation.trim() });
            if (document.has("notes")) document.addIn(["notes"], note);
            else document.set("notes", document.createNode([note]));
            chooseOverlay({ name: overlay.name, text: document.toString({ lineWidth: 0 }) });
            setSays("");
            setCitation("");
          }}
        >
          Add it to the town’s file
        </button>
      </div>
      <details class="more">
        <summary>The town’s file itself</summary>
        <label for="overlay-text">Text</label>
        <textarea
          id="overlay-text"
          class="code"
          rows={16}
          spellcheck={false}
          value={overlay.text}
          onInput={(event) => chooseOverlay({ name: overlay.name, text: event.currentTarget.value }, "overlay")}
        />
      </details>
    </section>
  );
}

function parsed(text: string): { readonly notes?: unknown } | null {
  const document = parseDocument(text, { prettyErrors: false });
  const plain: unknown = document.errors.length > 0 ? null : document.toJS({ maxAliasCount: 0 });
  return typeof plain === "object" && plain !== null ? (plain as { notes?: unknown }) : null;
}

import { SITE_POINTS } from "@branchwork/sheets";
import { useEffect, useRef, useState } from "preact/hooks";
import { ChoiceField, TextField } from "../field/inputs.js";
import { at, type Edit, textAt } from "../job/document.js";
import { bareLength, LENGTH_UNITS, type LengthUnit } from "../job/length-text.js";
import { edit, focusAim, planner } from "../planner.js";
import { BeginPlan } from "./begin-plan.js";
import { type Chosen, type Moved, SiteCanvas } from "./site-canvas.js";
import { addingCorner, outlineAdded, overheadAdded, pointAdded, removing, reshaping } from "./site-edits.js";
import { leastCorners, OUTLINES, SITE, type SiteThing, siteThings } from "./site-model.js";
import { ThingCard } from "./thing-card.js";
import { WayLengths } from "./way-lengths.js";

const NORTH = [
  { value: 0, says: "Up" },
  { value: 45, says: "Up and to the right" },
  { value: 90, says: "Right" },
  { value: 135, says: "Down and to the right" },
  { value: 180, says: "Down" },
  { value: -135, says: "Down and to the left" },
  { value: -90, says: "Left" },
  { value: -45, says: "Up and to the left" },
] as const;

/** The unit the plan is written in. */
const unitOf = (plain: unknown): LengthUnit =>
  /\d\s*(m|cm|mm)$/.test(textAt(plain, [...SITE, "lot", 0, 0]) || textAt(plain, [...SITE, "lot", 1, 0])) ? "m" : "ft";

export function SiteStep() {
  const { plain } = planner();
  const [unit, setUnit] = useState<LengthUnit>(() => unitOf(plain));
  const there = at(plain, SITE) !== undefined;
  return (
    <>
      <p>
        Many towns want a drawing of the site: where the house, the outlet and the trench are, and how far from the lot line. If yours does not, go on; nothing
        else needs it.
      </p>
      <fieldset class="field">
        <legend>Measured in</legend>
        <div class="answer">
          {LENGTH_UNITS.map((each) => (
            <label class="radio" key={each}>
              <input type="radio" name="site-unit" checked={unit === each} onChange={() => setUnit(each)} />
              {each === "ft" ? "Feet" : "Metres"}
            </label>
          ))}
        </div>
      </fieldset>
      {there ? <Plan unit={unit} /> : <BeginPlan unit={unit} key={unit} />}
    </>
  );
}

function Plan({ unit }: { readonly unit: LengthUnit }) {
  const { plain, aim } = planner();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [moved, setMoved] = useState<Moved | null>(null);
  const [said, setSaid] = useState("");
  const area = useRef<HTMLDivElement>(null);
  const written = siteThings(plain);
  const things = moved === null ? written : written.map((thing) => (thing.key === moved.key ? { ...thing, corners: moved.corners } : thing));
  const open = things.find(({ key }) => key === chosen?.key) ?? null;
  const focusOn = (key: string) => requestAnimationFrame(() => area.current?.querySelector<SVGElement>(`[data-thing="${CSS.escape(key)}"]`)?.focus());

  // Sent here to a field of a thing: it is opened, and its field found.
  useEffect(() => {
    if (aim === null || !aim.path.startsWith("site_plan")) return;
    const thing = written.find(({ key }) => aim.path === key || aim.path.startsWith(`${key}.`) || aim.path.startsWith(`${key}[`));
    if (thing !== undefined) setChosen({ key: thing.key, corner: null });
    focusAim();
  }, [aim]);

  const tell = (thing: SiteThing, corners: SiteThing["corners"]) => {
    const i = corners.findIndex((corner, n) => corner !== null && (corner[0] !== thing.corners[n]?.[0] || corner[1] !== thing.corners[n]?.[1]));
    const place = corners[Math.max(0, i)];
    if (place) setSaid(`${thing.name}: ${bareLength(place[0], unit)} ${unit} across, ${bareLength(place[1], unit)} ${unit} up.`);
  };
  const move = (thing: SiteThing, corners: SiteThing["corners"], key: string) => {
    edit(reshaping(thing, corners, unit), key);
    tell(thing, corners);
  };
  const remove = ({ key, corner }: Chosen) => {
    const thing = written.find((each) => each.key === key);
    if (thing === undefined) return;
    if (corner !== null) {
      if (thing.corners.length <= leastCorners(thing)) return setSaid(`${thing.name} needs at least ${leastCorners(thing)} corners.`);
      edit([{ remove: thing.places[corner]! }]);
      setChosen({ key, corner: null });
      focusOn(key);
      return setSaid(`Corner ${corner + 1} of ${thing.name} is taken out.`);
    }
    if (thing.is === "lot") return setSaid("The lot line stays: move its corners.");
    edit(removing(thing), "", `${thing.name} is taken off the site plan.`);
    setChosen(null);
  };
  const added = (edits: readonly Edit[]) => {
    edit(edits);
    const last = edits[0];
    if (last === undefined || !("add" in last)) return;
    const list = last.at[1];
    const count = written.filter(({ path }) => path[1] === list).length;
    const key = `site_plan.${list}[${count}]`;
    setChosen({ key, corner: null });
    focusOn(key);
    setSaid("It stands on the plan: drag it, or use the arrow keys.");
  };

  return (
    <>
      <div ref={area}>
        <p class="hint" id="site-how">
          Drag what is on the plan to where it stands. By keyboard: Tab to it, arrow keys to move it (with Shift, ten times as far). Or press it and type its
          place below. The street is usually drawn at the bottom.
        </p>
        <SiteCanvas
          things={things}
          unit={unit}
          north={Number(at(plain, [...SITE, "north"])) || 0}
          chosen={chosen}
          choose={setChosen}
          moving={setMoved}
          move={move}
          insert={(thing, before, place) => {
            edit(addingCorner(thing, before, place, unit));
            setChosen({ key: thing.key, corner: before });
            setSaid(`A corner is added to ${thing.name}.`);
          }}
          remove={remove}
        />
      </div>
      <p role="status" class="hint said">
        {said}
      </p>
      {open === null ? (
        <p class="hint">Nothing is chosen. Press something on the plan, or choose it here:</p>
      ) : (
        <ThingCard thing={open} unit={unit} remove={remove} insert={(before, place) => edit(addingCorner(open, before, place, unit))} key={open.key} />
      )}
      <div class="field">
        <label for="site-thing">On the plan</label>
        <select id="site-thing" value={open?.key ?? ""} onChange={(event) => setChosen({ key: event.currentTarget.value, corner: null })}>
          {open === null && <option value="">Choose</option>}
          {things.map((thing) => (
            <option value={thing.key} key={thing.key}>
              {thing.name}
            </option>
          ))}
        </select>
      </div>
      <section aria-labelledby="site-add">
        <h3 id="site-add">Put on the plan</h3>
        <ul class="chips">
          {(Object.keys(OUTLINES) as (keyof typeof OUTLINES)[]).map((kind) => (
            <li key={kind}>
              <button type="button" onClick={() => added(outlineAdded(plain, kind, OUTLINES[kind], unit))}>
                + {OUTLINES[kind]}
              </button>
            </li>
          ))}
          {Object.entries(SITE_POINTS).map(([kind, says]) => (
            <li key={kind}>
              <button type="button" onClick={() => added(pointAdded(plain, kind, says.charAt(0).toUpperCase() + says.slice(1), unit))}>
                + {says.charAt(0).toUpperCase() + says.slice(1)}
              </button>
            </li>
          ))}
          <li>
            <button type="button" onClick={() => added(overheadAdded(plain, unit))}>
              + Overhead line
            </button>
          </li>
        </ul>
      </section>
      <WayLengths things={things} unit={unit} added={added} />
      <section aria-labelledby="site-paper">
        <h3 id="site-paper">For the drawing</h3>
        <ChoiceField
          path={[...SITE, "north"]}
          label="Which way is north on this plan?"
          find="A map on a telephone shows it; or the sun, which stands in the south at noon."
          choices={
            NORTH.some(({ value }) => value === at(plain, [...SITE, "north"]))
              ? NORTH
              : [...NORTH, { value: Number(at(plain, [...SITE, "north"])), says: `${textAt(plain, [...SITE, "north"])}° as in the file` }]
          }
        />
        <TextField
          path={[...SITE, "scale_note"]}
          label="How were the places measured?"
          why="It stands under the drawing. The plan is not a survey."
          placeholder="With a tape from the house corners, by the owner"
        />
        <button type="button" class="plain" onClick={() => edit([{ remove: [...SITE] }], "", "The site plan is taken out.")}>
          Take the site plan out
        </button>
      </section>
    </>
  );
}

import { useState } from "preact/hooks";
import { bareLength, feetOf, type LengthUnit } from "../job/length-text.js";
import { withUnit } from "../job/unit-text.js";
import { edit, planner } from "../planner.js";
import { beginning, type SiteStart } from "./site-edits.js";

const ASKED: readonly { readonly key: keyof SiteStart; readonly says: string; readonly feet: number; readonly metres: number }[] = [
  { key: "lotWidth", says: "Width of the lot, along the street", feet: 80, metres: 25 },
  { key: "lotDepth", says: "Depth of the lot", feet: 120, metres: 36 },
  { key: "houseWidth", says: "Width of the house", feet: 40, metres: 12 },
  { key: "houseDepth", says: "Depth of the house", feet: 30, metres: 9 },
  { key: "fromLeft", says: "From the left lot line to the house", feet: 15, metres: 5 },
  { key: "fromStreet", says: "From the street’s lot line to the house", feet: 40, metres: 12 },
];

/** Six lengths give a plan to begin with; a lot of another shape is drawn from it by its corners. */
export function BeginPlan({ unit }: { readonly unit: LengthUnit }) {
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const typedOf = ({ key, feet, metres }: (typeof ASKED)[number]) => typed[key] ?? String(unit === "ft" ? feet : metres);
  const feet = ASKED.map((asked) => [asked.key, feetOf(withUnit(typedOf(asked), unit))] as const);
  const least = (key: string) => (key.startsWith("from") ? 0 : 3);
  const wrong = feet.filter(([key, value]) => value === null || value < least(key) || value > 5000).map(([key]) => key);
  return (
    <section aria-labelledby="begin-plan">
      <h3 id="begin-plan">Begin with six lengths</h3>
      <p class="hint">
        Rough ones will do; everything can be dragged and typed afterwards. The tax map or the plot plan from when you bought the house gives the lot. The plan
        says that it is rough until you say how it was measured.
      </p>
      <div class="row">
        {ASKED.map((asked) => (
          <div class="field" key={asked.key}>
            <label for={`site-${asked.key}`}>{asked.says}</label>
            <div class="answer">
              <span class="quantity">
                <input
                  id={`site-${asked.key}`}
                  type="text"
                  inputMode="decimal"
                  autocomplete="off"
                  value={typedOf(asked)}
                  aria-invalid={wrong.includes(asked.key)}
                  aria-describedby={`site-${asked.key}-wrong`}
                  onInput={(event) => setTyped({ ...typed, [asked.key]: event.currentTarget.value })}
                />
                <span class="unit">{unit === "ft" ? "feet" : "metres"}</span>
              </span>
            </div>
            {wrong.includes(asked.key) && (
              <p class="wrong" id={`site-${asked.key}-wrong`}>
                Write a number, from {bareLength(least(asked.key), unit)} {unit}.
              </p>
            )}
          </div>
        ))}
      </div>
      <button
        type="button"
        class="main"
        disabled={wrong.length > 0}
        onClick={() => edit(beginning(planner().plain, Object.fromEntries(feet) as unknown as SiteStart, unit))}
      >
        Begin the plan
      </button>
    </section>
  );
}

import { useState } from "preact/hooks";
import { at, type Edit, printPath, textAt } from "../job/document.js";
import { withUnit } from "../job/unit-text.js";
import { edit, planner } from "../planner.js";
import { type Asked, describedBy, Field, isWrong } from "./field.js";

interface TextOf extends Asked {
  readonly long?: boolean;
  readonly placeholder?: string;
  /** Also written when this is answered. */
  readonly also?: (value: string) => readonly Edit[];
  /** Why what is typed cannot be written; what stood there when the typing began stays then. */
  readonly refuses?: (value: string) => string | null;
}

/** Holds what is being typed, so that a field may be empty for a moment without its line leaving the file. */
export function useTyped(stored: string, commit: (value: string) => void) {
  const [typed, setTyped] = useState<string | null>(null);
  return {
    value: typed ?? stored,
    onFocus: () => setTyped(stored),
    onInput: (event: Event) => {
      const { value } = event.currentTarget as HTMLInputElement;
      setTyped(value);
      if (value.trim() !== "") commit(value);
    },
    onBlur: () => {
      if (typed !== null && typed.trim() === "" && stored !== "") commit("");
      setTyped(null);
    },
  };
}

export function TextField({ long, placeholder, also, refuses, ...asked }: TextOf) {
  const { path } = asked;
  const key = printPath(path);
  const stored = textAt(planner().plain, path);
  const [begun, setBegun] = useState(stored);
  const [refusal, setRefusal] = useState<string | null>(null);
  const write = (value: string) => edit([{ at: path, put: value.trim() === "" ? undefined : value }, ...(also?.(value) ?? [])], key);
  const typed = useTyped(stored, (value) => {
    const why = refuses?.(value) ?? null;
    setRefusal(why);
    if (why === null) write(value);
  });
  const given = {
    id: `field-${key}`,
    "aria-describedby": describedBy(path),
    "aria-invalid": refusal !== null || isWrong(path),
    autocomplete: "off",
    placeholder,
    ...typed,
    onFocus: () => {
      typed.onFocus();
      setBegun(stored);
    },
    onBlur: () => {
      typed.onBlur();
      if (refusal !== null && begun !== stored) write(begun);
      setRefusal(null);
    },
  } as const;
  return (
    <Field {...asked}>
      {long ? <textarea rows={3} {...given} /> : <input type="text" {...given} />}
      {refusal && (
        <p class="wrong" role="alert">
          {refusal}
        </p>
      )}
    </Field>
  );
}

/** A number with its usual unit; another unit that the reader knows may be typed with it ("26 m"). */
export function QuantityField({ unit, ...asked }: Asked & { readonly unit: string }) {
  const { path } = asked;
  const key = printPath(path);
  const stored = textAt(planner().plain, path);
  const bare = stored.endsWith(` ${unit}`) ? stored.slice(0, -unit.length - 1) : stored;
  const typed = useTyped(bare, (value) => {
    edit([{ at: path, put: withUnit(value, unit) || undefined }], key);
  });
  return (
    <Field {...asked}>
      <span class="quantity">
        <input
          id={`field-${key}`}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          aria-describedby={describedBy(path)}
          aria-invalid={isWrong(path)}
          {...typed}
        />
        <span class="unit">{UNITS[unit] ?? unit}</span>
      </span>
    </Field>
  );
}
const UNITS: Readonly<Record<string, string>> = { A: "amperes", ft: "feet", in: "inches", ft2: "square feet", in3: "cubic inches", kW: "kW", kVA: "kVA" };

/** A whole or plain number of the file. */
export function NumberField(asked: Asked & { readonly unit?: string }) {
  const { path } = asked;
  const key = printPath(path);
  const typed = useTyped(textAt(planner().plain, path), (value) => {
    const number = Number(value);
    edit([{ at: path, put: value.trim() === "" ? undefined : Number.isFinite(number) ? number : value }], key);
  });
  return (
    <Field {...asked}>
      <span class="quantity">
        <input
          id={`field-${key}`}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          aria-describedby={describedBy(path)}
          aria-invalid={isWrong(path)}
          {...typed}
        />
        {asked.unit && <span class="unit">{asked.unit}</span>}
      </span>
    </Field>
  );
}

export interface Choice {
  readonly value: string | number | boolean;
  readonly says: string;
}

/** One of several, as a list to pick from. `empty` is the choice of saying nothing. */
export function ChoiceField({
  choices,
  empty,
  put,
  ...asked
}: Asked & { readonly choices: readonly Choice[]; readonly empty?: string; readonly put?: (value: Choice["value"] | undefined) => void }) {
  const { path } = asked;
  const value = at(planner().plain, path);
  const known = choices.findIndex((choice) => choice.value === value);
  return (
    <Field {...asked}>
      <select
        id={`field-${printPath(path)}`}
        aria-describedby={describedBy(path)}
        aria-invalid={isWrong(path)}
        value={String(known)}
        onChange={(event) => {
          const chosen = choices[Number(event.currentTarget.value)]?.value;
          if (put) put(chosen);
          else edit([{ at: path, put: chosen }]);
        }}
      >
        {(empty !== undefined || known < 0) && <option value="-1">{empty ?? "Choose"}</option>}
        {choices.map((choice, i) => (
          <option value={String(i)} key={String(choice.value)}>
            {choice.says}
          </option>
        ))}
      </select>
    </Field>
  );
}

/** Yes, no, or not known, which leaves the field out. */
export function YesNoField({ yes = "Yes", no = "No", ...asked }: Asked & { readonly yes?: string; readonly no?: string }) {
  const { path } = asked;
  const value = at(planner().plain, path);
  const name = `field-${printPath(path)}`;
  const options = [
    { put: true, says: yes },
    { put: false, says: no },
    { put: undefined, says: "I don’t know" },
  ];
  return (
    <Field {...asked} group>
      {options.map((option) => (
        <label class="radio" key={option.says}>
          <input type="radio" name={name} checked={value === option.put} onChange={() => edit([{ at: path, put: option.put }])} />
          {option.says}
        </label>
      ))}
    </Field>
  );
}

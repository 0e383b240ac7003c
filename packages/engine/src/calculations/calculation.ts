import * as z from "zod";
import { EDITIONS, type Edition } from "../basis/edition.js";

const idOf = (name: string) =>
  z.string().min(1).max(100).default(name).describe("id of the result, which its parts build on; the calculation's name when left out");

type WithId<Fields extends z.ZodRawShape> = z.ZodObject<{ id: ReturnType<typeof idOf> } & Fields, z.core.$strict>;

/** A calculation by its trade name, with a strict schema of what it is given: for a command line, a form, or another program. */
export interface Calculation<Given extends z.ZodObject = z.ZodObject, Result = unknown> {
  /** Kebab-case noun, the file's name. */
  readonly name: string;
  readonly title: string;
  /** What it works out, by which rule, and what it leaves out. */
  readonly about: string;
  /** Strict; every field says its unit. */
  readonly given: Given;
  /** The editions that have the rule. */
  readonly editions: readonly Edition[];
  readonly example: z.input<Given>;
  /** Why the result can be null, for a person to read; null where it never is. */
  readonly none: string | null;
  /** Takes what the schema gave out, not raw input: `calculate` reads raw input. Throws RangeError beyond the reach of the rule's tables. */
  run(given: z.output<Given>): Result;
}

/** Defines a calculation from its fields, keeping their types. `id` joins the fields. */
export function calculation<Fields extends z.ZodRawShape, Result>(parts: {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly fields: Fields;
  readonly editions?: readonly Edition[];
  readonly example: z.input<z.ZodObject<Fields, z.core.$strict>>;
  readonly none?: string;
  readonly run: (given: z.output<WithId<Fields>>) => Result;
}): Calculation<WithId<Fields>, Result> {
  const { fields, example, run, editions = EDITIONS, none = null, ...named } = parts;
  const given = z.strictObject({ id: idOf(parts.name), ...fields }) as WithId<Fields>;
  return { ...named, given, editions, none, example: example as z.input<WithId<Fields>>, run };
}

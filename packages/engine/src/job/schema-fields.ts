import * as z from "zod";

type Path = readonly PropertyKey[];

/** What stands at a path of plain data; undefined where nothing does. */
export function valueAt(plain: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (at, step) => (typeof at === "object" && at !== null && Object.hasOwn(at, step) ? (at as Record<PropertyKey, unknown>)[step] : undefined),
    plain,
  );
}

/** The names a schema knows at a path, those of every branch of a union; none where it holds no group of fields. */
export function fieldsAt(whole: z.ZodType, path: Path): readonly string[] {
  const at = path.reduce<unknown>((schema, step) => {
    const here = bare(schema);
    return here instanceof z.ZodObject ? here.shape[String(step)] : here instanceof z.ZodArray ? here.element : undefined;
  }, whole);
  const here = bare(at);
  if (here instanceof z.ZodUnion) return [...new Set(here.options.flatMap((option) => (option instanceof z.ZodObject ? Object.keys(option.shape) : [])))];
  return here instanceof z.ZodObject ? Object.keys(here.shape) : [];
}

function bare(schema: unknown): unknown {
  const wrapped = schema instanceof z.ZodOptional || schema instanceof z.ZodDefault || schema instanceof z.ZodPrefault || schema instanceof z.ZodNullable;
  return wrapped ? bare(schema.unwrap()) : schema;
}

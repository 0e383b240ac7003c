import fc from "fast-check";

type Leaf = string | number | boolean | null;

/** Values that have broken programs, and edges of what a job allows. */
export const ODD_VALUES: readonly (Leaf | readonly unknown[] | object)[] = [
  "",
  " ",
  "0",
  "-0",
  "-1",
  "0 ft",
  "-0 ft",
  "0.000001 ft",
  "5000 ft",
  "5001 ft",
  "1/3 in",
  "1-1/2 in",
  "1e9 ft",
  "1,000 ft",
  "0 in",
  "0 in3",
  "0 VA",
  "200000 VA",
  "0.1 A",
  "1 A",
  "10 A",
  "399.999999 A",
  "400 A",
  "600 A",
  "-60 °C",
  "85 °C",
  "nan",
  "infinity",
  "true",
  "null",
  "__proto__",
  "constructor",
  "{{constructor}}",
  "</style><script>alert(1)</script>",
  "=1+1",
  "\u0000",
  "\u202e",
  "\ud800",
  "\ufeff",
  "🧿",
  "x".repeat(401),
  0,
  -0,
  0.1,
  1,
  2,
  30,
  84,
  200,
  201,
  -1,
  2 ** 53,
  1e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  true,
  false,
  null,
  [],
  {},
  [[]],
  { a: 1 },
];

const PIECES = [
  "\t",
  "\r",
  "\n",
  "\0",
  "\ufeff",
  "\u202e",
  "- ",
  ": ",
  "#",
  "&a ",
  "*a",
  "!!set ",
  "{",
  "}",
  "[",
  "]",
  '"',
  "'",
  "|",
  ">",
  "? ",
  "<<: ",
  "---\n",
  "...\n",
  "%YAML 9\n",
];

/** A text with a few places cut, doubled, shifted or filled with what YAML gives a meaning to. */
export function yamlMutation(text: string): fc.Arbitrary<string> {
  const step = fc.record({
    at: fc.nat(text.length),
    length: fc.nat(80),
    what: fc.constantFrom("cut", "double", "move", "piece", "indent", "swap"),
    piece: fc.oneof(fc.constantFrom(...PIECES), fc.string({ maxLength: 12, unit: "binary" })),
  });
  return fc.array(step, { minLength: 1, maxLength: 5 }).map((steps) =>
    steps.reduce((now, { at, length, what, piece }) => {
      const cut = now.slice(at, at + length);
      if (what === "cut") return now.slice(0, at) + now.slice(at + length);
      if (what === "double") return now.slice(0, at) + cut + now.slice(at);
      if (what === "move") return now.slice(0, at) + now.slice(at + length) + cut;
      if (what === "indent") return now.slice(0, at) + now.slice(at).replace(/\n {2}/, "\n   ");
      if (what === "swap") return now.slice(0, at) + [...cut].reverse().join("") + now.slice(at + length);
      return now.slice(0, at) + piece + now.slice(at);
    }, text),
  );
}

type Path = readonly (string | number)[];

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, inner]) => pathsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]))];
}

function at(tree: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) => (typeof value === "object" && value !== null ? (value as Record<string | number, unknown>)[step] : undefined),
    tree,
  );
}

/** The tree with another value at a path; undefined takes it out. */
function put(tree: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof tree !== "object" || tree === null) return tree;
  const inner = put((tree as Record<string | number, unknown>)[step], rest, value);
  if (Array.isArray(tree)) return inner === undefined ? tree.filter((_, i) => i !== step) : tree.map((item, i) => (i === step ? inner : item));
  const { [step]: _old, ...others } = tree as Record<string | number, unknown>;
  return inner === undefined ? others : { ...others, [step]: inner };
}

/** A tree with a few values odd, missing, doubled, or those of another place; half of the changes keep to values of the same name. */
export function treeMutation(tree: object): fc.Arbitrary<object> {
  const paths = pathsOf(tree).filter((path) => path.length > 0);
  const nameOf = (path: Path) => path.findLast((step) => typeof step === "string");
  const step = fc.record({
    where: fc.constantFrom(...paths),
    other: fc.nat(),
    odd: fc.constantFrom(...ODD_VALUES),
    what: fc.constantFrom("odd", "drop", "alike", "alike", "alike", "scaled", "scaled", "any", "double", "flip", "flip"),
    by: fc.constantFrom(0, 0.01, 0.5, 0.99, 1.01, 2, 10, 100),
  });
  return fc.array(step, { minLength: 1, maxLength: 4 }).map(
    (steps) =>
      steps.reduce<unknown>((now, { where, other, odd, what, by }) => {
        const here = at(now, where);
        const alike = paths.filter((path) => nameOf(path) === nameOf(where));
        if (what === "odd") return put(now, where, odd);
        if (what === "drop") return put(now, where, undefined);
        if (what === "alike") return put(now, where, at(now, alike[other % alike.length]!));
        if (what === "any") return put(now, where, at(now, paths[other % paths.length]!));
        if (what === "flip") return typeof here === "boolean" ? put(now, where, !here) : now;
        if (what === "double") return Array.isArray(here) ? put(now, where, [...here, ...here]) : now;
        if (typeof here === "number") return put(now, where, Number.isInteger(here) ? Math.round(here * by) : here * by);
        return typeof here === "string"
          ? put(
              now,
              where,
              here.replace(/\d+(\.\d+)?/, (n) => String(Number((Number(n) * by).toFixed(4)))),
            )
          : now;
      }, tree) as object,
  );
}

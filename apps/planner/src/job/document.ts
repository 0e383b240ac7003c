import { type Document, isMap, isScalar, isSeq, parseDocument, visit } from "yaml";

export type Path = readonly (string | number)[];

/** One change to the job's text: a value put, added to a list, or taken out. */
export type Edit =
  | { readonly put: unknown; readonly at: Path /** Not known yet: the value stands in, and says so in the file and on paper. */; readonly assumed?: boolean }
  | { readonly add: unknown; readonly at: Path /** Place in the list; its end when left out. */; readonly before?: number }
  | { readonly remove: Path };

/** Written behind a value that nobody has read yet. */
export const ASSUMED = " assumed, to be verified on site";

/** The path as the reader of the job prints it: service.panel.circuits[0].route. */
export const printPath = (path: Path): string => path.map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`)).join("");

/** The job as plain data, whatever it holds; null where the text is not YAML of a map. */
export function plainOf(text: string): unknown {
  const document = parseDocument(text, { prettyErrors: false });
  return document.errors.length > 0 || !isMap(document.contents) ? null : document.toJS({ maxAliasCount: 0 });
}

/** The value at a path of plain data. */
export function at(plain: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (here, step) => (typeof here === "object" && here !== null && Object.hasOwn(here, step) ? (here as Record<string | number, unknown>)[step] : undefined),
    plain,
  );
}

/** Rows of a list at a path; none where there is no list. */
export const listAt = (plain: unknown, path: Path): readonly unknown[] => {
  const value = at(plain, path);
  return Array.isArray(value) ? value : [];
};

/** Text at a path; empty where there is none. */
export const textAt = (plain: unknown, path: Path): string => {
  const value = at(plain, path);
  return typeof value === "string" ? value : typeof value === "number" ? String(value) : "";
};

/** The text with the edits made; comments and everything not edited stay. Null where the text is not YAML of a map. */
export function edited(text: string, edits: readonly Edit[]): string | null {
  const document = parseDocument(text, { prettyErrors: false, strict: false });
  if (document.errors.length > 0 || !isMap(document.contents)) return null;
  for (const edit of edits) {
    if ("remove" in edit) take(document, edit.remove);
    else if ("add" in edit) add(document, edit.at, edit.add, edit.before);
    else if (edit.put === undefined) take(document, edit.at);
    else put(document, edit.at, edit.put, edit.assumed === true);
  }
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

/** Nothing is there to be taken where the path leads nowhere. */
function take(document: Document, path: Path): void {
  if (document.hasIn(path)) document.deleteIn(path);
}

function put(document: Document, path: Path, value: unknown, assumed: boolean): void {
  const there = document.getIn(path, true);
  if (isScalar(there) && (typeof value !== "object" || value === null)) {
    there.value = value;
    delete there.minFractionDigits;
    delete there.source;
  } else document.setIn(path, document.createNode(value, { flow: isSmall(value) }));
  const node = document.getIn(path, true);
  if (!isScalar(node)) return;
  if (assumed) node.comment = ASSUMED;
  else if (node.comment === ASSUMED) node.comment = null;
}

function add(document: Document, path: Path, value: unknown, before?: number): void {
  const node = document.createNode(value, { flow: isSmall(value) });
  const list = document.getIn(path, true);
  if (isSeq(list)) {
    if (list.items.length === 0) list.flow = false;
    list.items.splice(before ?? list.items.length, 0, node);
  } else {
    const made = document.createNode([value]);
    if (isSeq(made)) made.flow = false;
    document.setIn(path, made);
  }
}

const isPlainList = (value: unknown): boolean => Array.isArray(value) && value.every((item) => typeof item !== "object");

/** Written on one line: plain lists, lists of places, small groups. */
const isSmall = (value: unknown): boolean =>
  Array.isArray(value)
    ? value.length > 0 && value.every((item) => typeof item !== "object" || isPlainList(item))
    : typeof value === "object" &&
      value !== null &&
      Object.values(value).every((item) => typeof item !== "object" || Array.isArray(item)) &&
      Object.keys(value).length < 8;

/** Printed paths of the values that stand in for what is not known yet. */
export function assumedPaths(text: string): readonly string[] {
  const document = parseDocument(text, { prettyErrors: false });
  const found: string[] = [];
  visit(document, {
    Scalar(key, node, ancestors) {
      if (node.comment !== ASSUMED || key === "key") return;
      found.push(printPath(pathTo(ancestors, node)));
    },
  });
  return found;
}

function pathTo(ancestors: readonly unknown[], node: unknown): Path {
  const chain = [...ancestors, node];
  const path: (string | number)[] = [];
  for (const [i, here] of chain.entries()) {
    const next = chain[i + 1];
    if (isSeq(here) && next !== undefined) path.push(here.items.indexOf(next as never));
    else if (isMap(here) && next !== undefined) {
      const name = (next as { key?: unknown }).key;
      path.push(isScalar(name) ? String(name.value) : String(name));
    }
  }
  return path;
}

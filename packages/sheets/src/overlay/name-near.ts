import { editDistance } from "@branchwork/engine";

/** How to mend a name that leads nowhere: the one it is nearest to, if any, then all there are. */
export function nameOneOf(given: string, known: readonly string[]): string {
  const near = nearest(given, known);
  const all = `one of ${known.join(known.some((name) => name.includes(",")) ? "; " : ", ")}`;
  return near === null ? `name ${all}` : `did you mean "${near}"? It is ${all}`;
}

const MOST = 60;
const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "")
    .slice(0, MOST);

function nearest(given: string, known: readonly string[]): string | null {
  const asked = plain(given);
  const [first] = known
    .map((name) => ({ name, steps: plain(name).includes(asked) || asked.includes(plain(name)) ? 0 : editDistance(asked, plain(name)) }))
    .sort((a, b) => a.steps - b.steps);
  return first !== undefined && asked.length > 2 && first.steps <= Math.max(2, Math.floor(asked.length / 3)) ? first.name : null;
}

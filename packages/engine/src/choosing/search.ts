import type { Offer } from "./offers.js";

export interface SearchGiven {
  /** For each segment, the ways to build it. */
  readonly bySegment: readonly (readonly Offer[])[];
  /** For each segment, its group: within one, every segment has the same wire. */
  readonly groups: readonly number[];
  /** Most drop of the whole, in billionths of a per cent. */
  readonly limit: number;
}

interface Point {
  readonly drop: number;
  readonly weight: number;
}
interface Node extends Point {
  readonly at: number;
  readonly last: Offer | null;
  readonly before: Node | null;
  /** Weight so far and the least the rest can weigh. */
  readonly bound: number;
}

/** Of points, those that no other beats in both drop and weight, lightest first. */
function unbeaten(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of [...points].sort((a, b) => a.weight - b.weight || a.drop - b.drop))
    if (kept.length === 0 || point.drop < kept.at(-1)!.drop) kept.push(point);
  return kept;
}

/** For each segment and each wire it may go on with ("" for any), what the rest of the way can cost at best for each drop. */
function bounds({ bySegment, groups }: SearchGiven): readonly ReadonlyMap<string, readonly Point[]>[] {
  const made: ReadonlyMap<string, readonly Point[]>[] = new Array(bySegment.length + 1);
  made[bySegment.length] = new Map([["", [{ drop: 0, weight: 0 }]]]);
  for (let i = bySegment.length - 1; i >= 0; i--) {
    const here = new Map<string, readonly Point[]>();
    const joined = i + 1 < groups.length && groups[i + 1] === groups[i];
    for (const wire of new Set(bySegment[i]!.map((offer) => offer.wire))) {
      const rest = made[i + 1]!.get(joined ? wire : "") ?? [];
      const own = unbeaten(bySegment[i]!.filter((offer) => offer.wire === wire));
      here.set(wire, unbeaten(own.flatMap((a) => rest.map((b) => ({ drop: a.drop + b.drop, weight: a.weight + b.weight })))));
    }
    here.set("", unbeaten([...here.values()].flat()));
    made[i] = here;
  }
  return made;
}

/**
 * Every combination within the drop limit, cheapest first: best-first with an exact bound, so nothing is passed over.
 * A branch is left only where the rest of the way cannot keep within the limit: drop adds along the way and is never negative.
 */
export function* combinations(given: SearchGiven): Generator<{ readonly offers: readonly Offer[]; readonly drop: number; readonly weight: number }> {
  const { bySegment, groups, limit } = given;
  const least = bounds(given);
  // Each share of the drop is rounded by at most half a billionth.
  const allowed = limit + bySegment.length;
  const rest = (at: number, wire: string, drop: number) => least[at]!.get(wire)?.find((point) => drop + point.drop <= allowed)?.weight;
  const heap = new Heap();
  heap.push({ at: 0, last: null, before: null, drop: 0, weight: 0, bound: 0 });
  for (let node = heap.pop(); node !== undefined; node = heap.pop()) {
    const { at } = node;
    if (at === bySegment.length) {
      yield { offers: chain(node), drop: node.drop, weight: node.weight };
      continue;
    }
    const tied = at > 0 && groups[at] === groups[at - 1] ? node.last!.wire : null;
    const joined = at + 1 < groups.length && groups[at + 1] === groups[at];
    for (const offer of bySegment[at]!) {
      if (tied !== null && offer.wire !== tied) continue;
      const drop = node.drop + offer.drop;
      const ahead = rest(at + 1, joined ? offer.wire : "", drop);
      if (ahead === undefined) continue;
      const weight = node.weight + offer.weight;
      heap.push({ at: at + 1, last: offer, before: node, drop, weight, bound: weight + ahead });
    }
  }
}

function chain(node: Node): readonly Offer[] {
  const offers: Offer[] = [];
  for (let at: Node | null = node; at !== null; at = at.before) if (at.last !== null) offers.unshift(at.last);
  return offers;
}

/** Least bound first; of equals, the less drop, then the one further on. */
class Heap {
  readonly #nodes: Node[] = [];

  push(node: Node): void {
    const nodes = this.#nodes;
    let i = nodes.push(node) - 1;
    for (let up = (i - 1) >> 1; i > 0 && before(nodes[i]!, nodes[up]!); up = (i - 1) >> 1) {
      [nodes[i], nodes[up]] = [nodes[up]!, nodes[i]!];
      i = up;
    }
  }

  pop(): Node | undefined {
    const nodes = this.#nodes;
    const top = nodes[0];
    const last = nodes.pop();
    if (top === undefined || last === undefined || nodes.length === 0) return top;
    nodes[0] = last;
    for (let i = 0; ; ) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) if (child < nodes.length && before(nodes[child]!, nodes[least]!)) least = child;
      if (least === i) return top;
      [nodes[i], nodes[least]] = [nodes[least]!, nodes[i]!];
      i = least;
    }
  }
}

const before = (a: Node, b: Node) => a.bound < b.bound || (a.bound === b.bound && (a.drop < b.drop || (a.drop === b.drop && a.at > b.at)));

import { isCollection, isMap, isNode, isScalar, type Node } from "yaml";

/** Where the node at `path` starts; where it is missing, the nearest node that holds it; `atKey`, the name itself. */
export function offsetOf(root: Node | null, path: readonly (string | number)[], atKey: boolean): number {
  let node = root;
  let offset = node?.range?.[0] ?? 0;
  for (const [index, step] of path.entries()) {
    if (!isCollection(node)) break;
    const pair = isMap(node) ? node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step)) : undefined;
    if (atKey && index === path.length - 1 && isScalar(pair?.key)) return pair.key.range?.[0] ?? offset;
    const next: unknown = pair ? pair.value : node.get(step, true);
    if (!isNode(next)) break;
    node = next;
    offset = node.range?.[0] ?? offset;
  }
  return offset;
}

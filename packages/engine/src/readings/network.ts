/**
 * A small linear network at one frequency, solved by modified nodal analysis.
 * Plain doubles on purpose: meter readings are measured quantities, known to three or four digits; no code figure passes through here.
 */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** An ideal source holds `from` above `to` by volts (rms) at an angle in degrees. An open joins nothing; it is kept so that a listing shows it. */
export type Element =
  | { readonly kind: "source"; readonly id: string; readonly from: string; readonly to: string; readonly volts: number; readonly degrees: number }
  | { readonly kind: "impedance"; readonly id: string; readonly from: string; readonly to: string; readonly ohms: Complex }
  | { readonly kind: "open"; readonly id: string; readonly from: string; readonly to: string };

export interface Network {
  readonly hertz: number;
  /** The node called zero volts. */
  readonly reference: string;
  readonly elements: readonly Element[];
}

export interface Solution {
  /** Volts of every node above the reference. */
  readonly volts: Readonly<Record<string, Complex>>;
  /** Amperes through every element from `from` to `to` inside the element. */
  readonly amperes: Readonly<Record<string, Complex>>;
}

export const ohms = (re: number, im = 0): Complex => ({ re, im });
/** The impedance of a capacitance in farads. */
export const capacitiveOhms = (farads: number, hertz: number): Complex => ({ re: 0, im: -1 / (2 * Math.PI * hertz * farads) });
export const magnitude = (a: Complex): number => Math.hypot(a.re, a.im);
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const polar = (size: number, degrees: number): Complex => ({
  re: size * Math.cos((degrees * Math.PI) / 180),
  im: size * Math.sin((degrees * Math.PI) / 180),
});
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
const over = (a: Complex, b: Complex): Complex => {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
};
const ZERO: Complex = { re: 0, im: 0 };
const ONE: Complex = { re: 1, im: 0 };

/** All nodes of a network but the reference, in order of appearance. */
export function nodesOf(network: Network): readonly string[] {
  return [...new Set(network.elements.flatMap((e) => [e.from, e.to]))].filter((node) => node !== network.reference);
}

/**
 * Solves a network for its node volts and element amperes.
 * Throws RangeError on a zero impedance, a repeated id, or a part with no path to the reference: such a network is a bug of its builder.
 */
export function solve(network: Network): Solution {
  const nodes = nodesOf(network);
  const sources = network.elements.filter((e) => e.kind === "source");
  const size = nodes.length + sources.length;
  const at = new Map(nodes.map((node, i) => [node, i]));
  const width = size + 1;
  // Row by row, real parts and imaginary parts apart: a diagnosis solves some thousands of these.
  const grid: Grid = { size, re: new Float64Array(size * width), im: new Float64Array(size * width) };
  const add = (row: number | undefined, column: number | undefined, value: Complex): void => {
    if (row === undefined || column === undefined) return;
    grid.re[row * width + column]! += value.re;
    grid.im[row * width + column]! += value.im;
  };
  const ids = new Set<string>();
  for (const element of network.elements) {
    if (ids.has(element.id)) throw new RangeError(`two elements are called ${element.id}`);
    ids.add(element.id);
    const from = at.get(element.from);
    const to = at.get(element.to);
    if (element.kind === "impedance") {
      if (!(magnitude(element.ohms) > 0) || !Number.isFinite(magnitude(element.ohms))) throw new RangeError(`${element.id} has no usable impedance`);
      const admittance = over(ONE, element.ohms);
      const less = minus(ZERO, admittance);
      add(from, from, admittance);
      add(to, to, admittance);
      add(from, to, less);
      add(to, from, less);
    } else if (element.kind === "source") {
      const branch = nodes.length + sources.indexOf(element);
      add(from, branch, ONE);
      add(to, branch, minus(ZERO, ONE));
      add(branch, from, ONE);
      add(branch, to, minus(ZERO, ONE));
      add(branch, size, polar(element.volts, element.degrees));
    }
  }
  const unknowns = eliminate(grid, (column) => nodes[column] ?? `source ${sources[column - nodes.length]?.id}`);
  const volts: Record<string, Complex> = { [network.reference]: ZERO };
  for (const [i, node] of nodes.entries()) volts[node] = unknowns[i]!;
  const amperes: Record<string, Complex> = {};
  for (const element of network.elements) {
    const across = minus(volts[element.from]!, volts[element.to]!);
    amperes[element.id] =
      element.kind === "open" ? ZERO : element.kind === "impedance" ? over(across, element.ohms) : unknowns[nodes.length + sources.indexOf(element)]!;
  }
  return { volts, amperes };
}

interface Grid {
  readonly size: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Gauss with scaled partial pivoting: megohms of a meter stand beside milliohms of a bond, so each row is judged by its own size. Works in place on the grid. */
function eliminate({ size, re, im }: Grid, name: (column: number) => string): readonly Complex[] {
  const width = size + 1;
  const order = Array.from({ length: size }, (_, row) => row * width);
  const sizeAt = (at: number): number => Math.hypot(re[at]!, im[at]!);
  const scales = order.map((start) => Math.max(...order.map((_, column) => sizeAt(start + column))));
  for (let column = 0; column < size; column += 1) {
    let best = column;
    for (let row = column + 1; row < size; row += 1) {
      if (sizeAt(order[row]! + column) / scales[row]! > sizeAt(order[best]! + column) / scales[best]!) best = row;
    }
    if (!(sizeAt(order[best]! + column) > 1e-13 * scales[best]!)) throw new RangeError(`nothing ties ${name(column)} to the reference`);
    [order[column], order[best]] = [order[best]!, order[column]!];
    [scales[column], scales[best]] = [scales[best]!, scales[column]!];
    const pivot = order[column]!;
    const top: Complex = { re: re[pivot + column]!, im: im[pivot + column]! };
    for (let row = column + 1; row < size; row += 1) {
      const start = order[row]!;
      if (re[start + column] === 0 && im[start + column] === 0) continue;
      const factor = over({ re: re[start + column]!, im: im[start + column]! }, top);
      for (let k = column; k < width; k += 1) {
        const [a, b] = [re[pivot + k]!, im[pivot + k]!];
        re[start + k]! -= factor.re * a - factor.im * b;
        im[start + k]! -= factor.re * b + factor.im * a;
      }
    }
  }
  const answer: Complex[] = Array.from({ length: size }, () => ZERO);
  for (let row = size - 1; row >= 0; row -= 1) {
    const start = order[row]!;
    let rest: Complex = { re: re[start + size]!, im: im[start + size]! };
    for (let k = row + 1; k < size; k += 1) rest = minus(rest, times({ re: re[start + k]!, im: im[start + k]! }, answer[k]!));
    answer[row] = over(rest, { re: re[start + row]!, im: im[start + row]! });
  }
  return answer;
}

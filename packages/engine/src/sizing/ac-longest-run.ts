import { type Decimal, decimal, type Numeric } from "../quantity.js";
import type { Size } from "../tables/size.js";
import { type AcDropGiven, type AcSegment, lost, outAndBack } from "./ac-drop.js";
import { type Impedance, loopImpedance } from "./impedance.js";

/** Longest one-way run in whole feet (rounded down) at which each size keeps the drop within a per cent of the source volts; null where Table 9 lacks the size. */
export function longestAcRuns(
  given: Omit<AcDropGiven, "segments"> & {
    readonly like: Omit<AcSegment, "size" | "feet" | "neutral">;
    readonly limitPercent: Numeric;
    readonly sizes: readonly Size[];
  },
): readonly { readonly size: Size; readonly feet: string | null }[] {
  const allowed = decimal(given.sourceVolts).times(given.limitPercent).div(100);
  return given.sizes.map((size) => {
    const foot = loopImpedance({ id: "trial", label: "trial", runs: outAndBack([{ ...given.like, size, feet: 1 }], true), edition: given.edition });
    return { size, feet: foot && longest(given, foot.impedance, allowed) };
  });
}

/** With n feet: (VS − d)² = VR² and VS² = (VR + n a)² + (n b)², a quadratic in n for a set drop d; linear by the effective method. */
function longest(given: Omit<AcDropGiven, "segments">, foot: Impedance, allowed: Decimal): string | null {
  const { along, across } = lost(given, foot);
  if (given.method === "ac-effective") return along.isZero() ? null : allowed.div(along).floor().toFixed();
  const receiving = decimal(given.sourceVolts).minus(allowed);
  const a = along.pow(2).plus(across.pow(2));
  const c = receiving.pow(2).minus(decimal(given.sourceVolts).pow(2));
  if (a.isZero()) return null;
  const half = receiving.times(along);
  return half
    .neg()
    .plus(half.pow(2).minus(a.times(c)).sqrt())
    .div(a)
    .floor()
    .toFixed();
}

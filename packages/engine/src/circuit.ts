import type { Basis } from "./basis/basis.js";
import { designBoxes } from "./boxes.js";
import type { Assumption, DesignedCircuit } from "./designed.js";
import type { Circuit, Job } from "./job/schema.js";
import { OUTLETS } from "./outlet.js";
import { decimal, print } from "./quantity.js";
import { outletLoad } from "./service/outlet-load.js";
import { overcurrentRating } from "./sizing/overcurrent.js";
import { raiseOverPulls } from "./sizing/pull-groups.js";
import { designSegment, requiredSize, type SegmentGiven } from "./sizing/segment.js";
import { dropPercent, longestRuns, lostVolts, voltageDrop } from "./sizing/voltage-drop.js";
import { isCable, withinCable } from "./tables/cable.js";
import { compareSizes, SIZES, type Size } from "./tables/size.js";
import type { Worked } from "./worked.js";

const LARGEST_RAISED: Size = "4/0";

/** Settles one circuit: overcurrent, then each segment's least size, then one raise for voltage drop over the open sizes, then the rest. */
export function designCircuit(asked: Circuit, job: Job, basis: Basis): { readonly designed: DesignedCircuit; readonly assumptions: readonly Assumption[] } {
  const edition = basis.edition;
  const needs = OUTLETS[asked.serves];
  // A receptacle is worked at its own rating: anything up to it may be plugged in.
  const circuit: Circuit = { ...asked, current: needs.receptacleAmperes ?? asked.current };
  const id = circuit.id;
  const breaker = overcurrentRating({
    id: `${id}.overcurrent`,
    continuous: needs.continuous ? circuit.current : 0,
    noncontinuous: needs.continuous ? 0 : circuit.current,
    edition,
  });
  const rating = circuit.breaker.rating ?? Number(breaker.value);
  const demand = { load: circuit.current, terminalLoad: decimal(circuit.current).times(needs.continuous ? "1.25" : "1"), overcurrent: rating };
  const assumptions: Assumption[] = [];
  if (circuit.current !== asked.current)
    assumptions.push({
      path: `${id}.current`,
      says: `${circuit.name}: worked at the outlet's ${print(circuit.current)} A, not the ${print(asked.current)} A entered`,
    });
  // 110.14(C)(1): 60 °C for 100 A and less unless everything the conductor ends on is listed and marked for 75 °C.
  const terminalC = job.service.panel.terminal_temperature === 75 && (circuit.terminals_75C || rating > 100) ? 75 : 60;
  const givens: SegmentGiven[] = circuit.route.map((segment, i) => ({
    id: `${id}.${i + 1}`,
    path: `${id}.route[${i}]`,
    segment,
    circuit,
    needs,
    rating,
    demand,
    terminalC,
    basis,
  }));
  const least = raiseOverPulls(circuit, givens.map(requiredSize));

  const sizesAt = (floor: Size): Size[] =>
    circuit.route.map((segment, i) => {
      const needed = least[i] ?? LARGEST_RAISED;
      return segment.conductors.size ?? withinCable(segment.method, compareSizes(needed, floor) < 0 ? floor : needed);
    });
  const legVolts = 120;
  const multiwire = needs.neutral && needs.volts === 240;
  const dropVolts = needs.neutral ? legVolts : needs.volts;
  const dropGiven = (sizes: readonly Size[]) => ({
    current: circuit.current,
    segments: circuit.route.map((segment, i) => ({
      size: sizes[i]!,
      material: isCable(segment.method) ? ("copper" as const) : segment.conductors.material,
      feet: segment.length,
    })),
    method: job.drop.method,
    edition,
  });
  const allowedVolts = decimal(dropVolts).times(job.drop.limit_percent).div(100);
  const floor =
    SIZES.slice(SIZES.indexOf("14"), SIZES.indexOf(LARGEST_RAISED) + 1).find((candidate) => lostVolts(dropGiven(sizesAt(candidate))).lte(allowedVolts)) ?? "14";
  const sizes = sizesAt(floor);

  const segments = givens.map((given, i) => {
    const { designed, assumptions: made } = designSegment(given, least[i] ?? null, sizes[i]!, given.segment.conductors.size ? "given" : "computed");
    assumptions.push(...made);
    return designed;
  });

  const settled = dropGiven(sizes);
  const balanced = voltageDrop({ id: `${id}.drop.balanced`, label: `Voltage drop at ${circuit.current} A, ${needs.volts} V between conductors`, ...settled });
  const worstLeg = voltageDrop({
    id: `${id}.drop.worst`,
    label: multiwire ? `Voltage drop at ${circuit.current} A, one 120 V leg loaded, all return in the neutral` : `Voltage drop at ${circuit.current} A`,
    ...settled,
  });
  const balancedPercent = dropPercent({
    id: `${id}.drop.balanced-percent`,
    label: `Drop, per cent of ${needs.volts} V`,
    drop: balanced,
    volts: needs.volts,
    edition,
  });
  const worstLegPercent = dropPercent({ id: `${id}.drop.worst-percent`, label: `Drop, per cent of ${dropVolts} V`, drop: worstLeg, volts: dropVolts, edition });
  const firstOpen = circuit.route.find((segment) => !isCable(segment.method)) ?? circuit.route[0]!;
  const longest = longestRuns({
    current: circuit.current,
    volts: dropVolts,
    limitPercent: job.drop.limit_percent,
    material: firstOpen.conductors.material,
    method: job.drop.method,
    edition,
    sizes: ["10", "8", "6", "4", "3", "2"],
  });

  const load = outletLoad(circuit, needs.volts, edition);
  if (circuit.load !== undefined)
    assumptions.push({ path: `${id}.load`, says: `${circuit.name}: ${print(circuit.load)} VA on the service is the preparer's own figure` });
  else if (needs.receptacleAmperes !== null)
    assumptions.push({
      path: `${id}.load`,
      says: `${circuit.name}: the code gives such an outlet at a house no demand factor; ${print(load.value)} VA (volts × amperes) is taken as a fixed load (common practice, no source)`,
    });
  const boxes = designBoxes(circuit, segments, needs, edition);
  const steps: Worked[] = [
    breaker,
    load,
    ...segments.flatMap((s) => s.steps),
    balanced,
    balancedPercent,
    ...(multiwire ? [worstLeg, worstLegPercent] : []),
    ...boxes.map((b) => b.required),
  ];
  return {
    designed: {
      circuit,
      outlet: needs.says,
      volts: needs.volts,
      legVolts,
      wires: (needs.hots + (needs.neutral ? 1 : 0) + 1) as 3 | 4,
      breaker,
      rating: String(rating),
      terminalC,
      load,
      segments,
      drop: { balanced, balancedPercent, worstLeg, worstLegPercent, longest },
      boxes,
      steps,
    },
    assumptions,
  };
}

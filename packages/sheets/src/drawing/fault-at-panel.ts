import { type Design, decimal, print } from "@branchwork/engine";

type Levels = { readonly lineToLine: { readonly value: string } | null; readonly lineToNeutral: { readonly value: string } | null };

/** Amperes as kiloamperes with one place more than a breaker's marking has. */
const kiloamperes = (amperes: string): string => `${print(decimal(amperes).div(1000), 2)} kA`;

/** The greater of the two faults at a place, "8.2 kA"; null where neither is known. */
export function greatestFault(levels: Levels): string | null {
  const known = [levels.lineToLine, levels.lineToNeutral].flatMap((level) => (level === null ? [] : [level.value]));
  const [first, ...rest] = known;
  return first === undefined ? null : kiloamperes(rest.reduce((most, next) => (decimal(next).gt(most) ? next : most), first));
}

/** The greater fault at a panel of the tree; null where no source is given. */
export function faultAtPanel(design: Design, panel: string): string | null {
  const feeder = design.feeders.find((f) => f.feeder.panel.id === panel);
  if (feeder !== undefined) return feeder.fault === null ? null : greatestFault(feeder.fault.atEnd);
  const point = design.serviceFault?.point;
  if (point === undefined) return null;
  return greatestFault({
    lineToLine: point.lineToLine === null ? null : { value: point.lineToLine.amperes.value },
    lineToNeutral: point.lineToNeutral === null ? null : { value: point.lineToNeutral.amperes.value },
  });
}

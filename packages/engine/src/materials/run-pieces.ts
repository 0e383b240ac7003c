import { cite, citeOther } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import type { DesignedCircuit, DesignedFeeder } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { each, type Piece, some } from "./piece.js";

const LABELS = { sections: everyEdition("408.4(A)"), standing: "memory" } as const;
const RODS = { sections: everyEdition("250.53(A)"), standing: "memory" } as const;
/** Boxes are priced in bands of volume. */
const BANDS = [25, 50, 100, 300] as const;

/** Name of a box in the price book. */
export function boxKey(wet: boolean, volumeIn3: number): string {
  const band = BANDS.find((top) => volumeIn3 <= top);
  return `box ${wet ? "wet" : "dry"} ${band === undefined ? `over ${BANDS.at(-1)}` : `to ${band}`} in3`;
}

/** What a run needs besides what lies along its way: breaker, boxes, device, cover, labels. */
export function runPieces(run: DesignedCircuit | DesignedFeeder, edition: Edition): readonly Piece[] {
  const { breaker, boxes } = run.run;
  const id = run.run.id;
  const kind = `${run.rating} A ${breaker.poles}-pole${breaker.gfci ? " GFCI" : ""}`;
  return some([
    each(`breaker ${kind}`, `Breaker ${kind}, of the family listed for ${run.panel}`, 1, id),
    ...boxes.map((box) =>
      each(boxKey(box.wet_location, box.volume), `Box, ${print(box.volume)} in³ or more${box.wet_location ? ", wet location" : ""}`, 1, id, {
        note: box.name,
      }),
    ),
    each("label", "Label or directory entry", 1 + (run.kind === "feeder" ? 1 : 0), id, {
      citations: [cite(LABELS, edition)!],
    }),
    ...(run.kind === "circuit" ? devicePieces(run) : feederPieces(run, edition)),
  ]);
}

function devicePieces({ circuit, run, rating }: DesignedCircuit): readonly (Piece | null)[] {
  const device = run.boxes.some((box) => box.device);
  const rv = circuit.serves.startsWith("rv-");
  if (rv && circuit.listed_rv_power_outlet)
    return [
      each(`rv power outlet ${circuit.serves}`, `Listed RV power outlet, ${circuit.serves.replace("rv-", "")} A`, 1, run.id, {
        note: "its enclosure may stand for the box",
      }),
    ];
  const cover = circuit.cover_plate;
  const own = circuit.gfci_device;
  const ground = own === "receptacle" ? " GFCI" : "";
  return [
    device ? each(`receptacle ${circuit.serves}${ground}`, `Receptacle for ${circuit.serves}${ground}`, 1, run.id) : null,
    own === "dead-front" ? each("dead-front GFCI", "Dead-front GFCI device", 1, run.id) : null,
    own === "disconnect" ? each(`GFCI disconnect ${rating} A`, `GFCI breaker ${rating} A in its enclosure, for the disconnect at the outlet`, 1, run.id) : null,
    device && cover !== undefined && cover !== "none" ? each(`cover ${cover}`, `Cover, ${cover}`, 1, run.id) : null,
  ];
}

function feederPieces({ feeder }: DesignedFeeder, edition: Edition): readonly (Piece | null)[] {
  const { panel } = feeder;
  const id = feeder.id;
  const electrode = feeder.electrode === true && feeder.building !== "same";
  const rods = { citations: [cite(RODS, edition)!, citeOther("Common practice", "two rods", "practice")] };
  return [
    each(`panel ${print(panel.bus)} A ${panel.spaces} spaces`, `Panel ${print(panel.bus)} A, ${panel.spaces} spaces`, 1, id, {
      note: `${panel.name}${decimal(panel.main ?? 0).isZero() ? "" : `, main ${print(panel.main!)} A`}; not wanted where it stands already`,
    }),
    each("ground bar", "Equipment ground bar kit", 1, id),
    electrode
      ? each("ground rod", "Ground rod, 8 ft", 2, id, { ...rods, note: "not wanted where an electrode stands; its conductor is not measured in the job" })
      : null,
    electrode ? each("rod clamp", "Rod clamp, listed for burial", 2, id, rods) : null,
  ];
}

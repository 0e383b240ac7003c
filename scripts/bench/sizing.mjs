import { join } from "node:path";
import { figure, row, timed } from "./measure.mjs";

const batch = 4000;
const rounds = 15;
const SIZES = ["14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0", "250", "300", "350", "400", "500"];
const RATINGS = [20, 30, 40, 50, 60, 70, 100, 125, 150, 200];

/** One circuit a number: load 20 to 199 A, 20 to 59 °C of air, 50 to 149 ft. */
const circuits = Array.from({ length: batch }, (_, i) => ({
  load: 20 + (i % 180),
  ambient: 20 + (i % 40),
  feet: 50 + (i % 100),
  overcurrent: RATINGS[i % 10],
}));

/** Conductor, grounding conductor and drop: worked and cited by the engine, and by the same formulas in bare doubles on the same tables. */
export async function sizing(root) {
  const from = (path) => import(join(root, "packages/engine/dist", path));
  const [{ leastConductor }, { groundingConductor }, { voltageDrop }, { AMPACITY }, { AMBIENT_CORRECTION }, { CONDUCTOR }, { GROUNDING_CONDUCTOR }, rating] =
    await Promise.all(
      [
        "sizing/conductor",
        "sizing/grounding",
        "sizing/voltage-drop",
        "tables/ampacity",
        "tables/ambient",
        "tables/conductor",
        "tables/grounding",
        "tables/standard-rating",
      ].map((name) => from(`${name}.js`)),
    );
  const place = { id: "c", material: "copper", insulation: "THWN-2", currentCarrying: 2, terminalC: 75, edition: "2023" };

  const worked = ({ load, ambient, feet, overcurrent }) => {
    const found = leastConductor({ ...place, ambientC: ambient }, { load, terminalLoad: load * 1.25, overcurrent });
    if (found === null) return null;
    const ground = groundingConductor({ id: "g", overcurrent, material: "copper", leastSize: found.size, usedSize: found.size, edition: "2023" });
    const drop = voltageDrop({
      id: "d",
      label: "Drop",
      current: load,
      segments: [{ size: found.size, material: "copper", feet }],
      method: "dc-resistance",
      edition: "2023",
    });
    return { size: found.size, ground: ground.size, volts: drop.value };
  };

  const column = (table, name) => table.columns.indexOf(name);
  const doubles = (table, name) => Object.fromEntries(Object.entries(table.rows).map(([key, cells]) => [key, Number(cells[column(table, name)])]));
  const [at75, at90, ohms, factors] = [
    doubles(AMPACITY, "cu75"),
    doubles(AMPACITY, "cu90"),
    doubles(CONDUCTOR, "dcCopper"),
    doubles(AMBIENT_CORRECTION, "f90"),
  ];
  const bands = Object.keys(factors)
    .map(Number)
    .sort((a, b) => a - b);
  const grounds = Object.entries(GROUNDING_CONDUCTOR.rows)
    .map(([top, cells]) => [Number(top), cells[column(GROUNDING_CONDUCTOR, "copper")]])
    .sort((a, b) => a[0] - b[0]);
  const cap = { 14: 15, 12: 20, 10: 30 };
  const bare = ({ load, ambient, feet, overcurrent }) => {
    const factor = factors[bands.find((top) => ambient <= top)];
    for (const size of SIZES) {
      const allowed = Math.min(at75[size], at90[size] * factor);
      if (at75[size] < load * 1.25 || allowed < load || (cap[size] ?? Number.POSITIVE_INFINITY) < overcurrent) continue;
      const next = rating.STANDARD_RATINGS["2023"].find((one) => allowed <= one);
      if (next !== undefined && next < overcurrent) continue;
      return { size, ground: grounds.find(([top]) => overcurrent <= top)[1], volts: (2 * load * ohms[size] * feet) / 1000 };
    }
    return null;
  };

  // The two must say the same, or the ratio compares different work.
  for (const circuit of circuits) {
    const [a, b] = [worked(circuit), bare(circuit)];
    // A behind-the-device ground is no larger than the hots, 250.122(A): the engine caps it, the bare formula does not.
    if (a?.size !== b?.size || (a !== null && Math.abs(Number(a.volts) - b.volts) > 1e-6))
      throw new Error(`engine and bare formulas differ on ${JSON.stringify(circuit)}: ${JSON.stringify([a, b])}`);
  }

  let kept = 0;
  const all = (work) => () => {
    for (const circuit of circuits) kept += work(circuit) === null ? 0 : 1;
  };
  const engine = await timed(rounds, all(worked), 3);
  const formulas = await timed(rounds, all(bare), 3);
  if (kept === 0) throw new Error("nothing was sized");
  const rows = [row(`${batch} circuits, worked and cited`, engine), row(`${batch} circuits, bare doubles`, formulas)];
  return [
    ...rows,
    figure("worked and cited", (batch / rows[0].median) * 1000, "sizings/s", "20,000 or more"),
    figure("bare doubles", (batch / rows[1].median) * 1000, "sizings/s"),
    figure("worked / bare time", rows[0].median / rows[1].median, "ratio"),
  ];
}

const KINDS = [
  ["rv-50", "50 A", 2],
  ["ev-supply", "32 A", 2],
  ["rv-30", "30 A", 1],
  ["ev-supply", "16 A", 2],
];

/** A made-up job: ten circuits at the house panel, ten at a panel in a detached workshop, each of two stretches with a box between. */
export function twentyCircuits() {
  const circuit = (i, first) => {
    const [serves, current, poles] = KINDS[i % KINDS.length];
    const at = first + i * 4;
    return {
      id: `c${first}-${i}`,
      name: `Circuit ${first}-${i}`,
      serves,
      current,
      terminals_75C: true,
      breaker: { poles, spaces: poles === 2 ? [at, at + 2] : [at], gfci: true, listed_for_panel: true, interrupting_kA: 10 },
      cover_plate: "weatherproof-in-use",
      route: [
        { name: `Wall ${first}-${i}`, place: "indoors", method: "EMT", length: `${10 + 5 * i} ft`, bends: [90, 90] },
        {
          name: `Outside ${first}-${i}`,
          place: i % 2 ? "buried" : "outdoors",
          method: i % 2 ? "PVC-40" : "PVC-80",
          length: `${20 + 4 * i} ft`,
          bends: [90],
          cover: "20 in",
        },
      ],
      boxes: [
        { name: `Joint ${first}-${i}`, after: `Wall ${first}-${i}`, volume: "60 in3" },
        { name: `Outlet ${first}-${i}`, after: `Outside ${first}-${i}`, volume: "60 in3", wet_location: true, device: true },
      ],
    };
  };
  const ten = (first) => Array.from({ length: 10 }, (_, i) => circuit(i, first));
  return {
    format: "branchwork-job/1",
    project: { title: "Twenty circuits", owner: "A. Maker", site: "1 Example Lane", preparer: { name: "A. Maker", role: "owner" } },
    code: { edition: "2023" },
    service: {
      rating: "400 A",
      fault_current_kA: 10,
      load_method: "measured-demand",
      measured: { peak: "12 kW", basis: "one-year", from: "made up" },
      panel: {
        id: "house",
        name: "House panel",
        bus: "400 A",
        spaces: 60,
        circuits: ten(1),
        feeders: [
          {
            id: "feeder",
            name: "Feeder to workshop",
            building: "detached",
            terminals_75C: true,
            breaker: { poles: 2, spaces: [49, 51], gfci: false },
            route: [{ name: "Trench", place: "buried", method: "PVC-40", length: "90 ft", bends: [90, 90], cover: "20 in" }],
            panel: { id: "workshop", name: "Workshop panel", bus: "400 A", spaces: 60, circuits: ten(2) },
          },
        ],
      },
    },
  };
}

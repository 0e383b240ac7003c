const METAL: ReadonlySet<string> = new Set(["EMT", "RMC", "IMC", "FMC", "LFMC"]);
const FLEXIBLE: ReadonlySet<string> = new Set(["FMC", "LFMC", "LFNC-A", "LFNC-B", "ENT"]);

/** Whether a wiring method is a raceway of metal. */
export const isMetal = (method: string): boolean => METAL.has(method);

/** Raceways that couple with one another by the plain coupling of their kind: PVC of either wall by cement, rigid and intermediate metal by thread. */
const COUPLED: Readonly<Record<string, string>> = { "PVC-80": "PVC-40", IMC: "RMC" };

/** Whether raceways of two methods couple as they are; else a fitting made for both stands between them. */
export const couples = (a: string, b: string): boolean => (COUPLED[a] ?? a) === (COUPLED[b] ?? b);

/** Whether it is a raceway that gives by itself. */
export const isFlexible = (method: string): boolean => FLEXIBLE.has(method);

const METAL: ReadonlySet<string> = new Set(["EMT", "RMC", "IMC", "FMC", "LFMC"]);
const FLEXIBLE: ReadonlySet<string> = new Set(["FMC", "LFMC", "LFNC-A", "LFNC-B", "ENT"]);

/** Whether a wiring method is a raceway of metal. */
export const isMetal = (method: string): boolean => METAL.has(method);

/** Whether it is a raceway that gives by itself. */
export const isFlexible = (method: string): boolean => FLEXIBLE.has(method);

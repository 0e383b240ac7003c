/**
 * The roads to a voltage drop: the K constant; Table 8 direct-current resistance; Table 9 effective impedance R cos θ + X sin θ;
 * Table 9 impedance solved exactly as phasors.
 */
export const DROP_METHODS = ["K", "dc-resistance", "ac-effective", "ac-exact"] as const;
export type DropMethodName = (typeof DROP_METHODS)[number];
export type AcDropMethod = Extract<DropMethodName, "ac-effective" | "ac-exact">;

/** Whether a method needs a power factor and a raceway material. */
export const isAcMethod = (method: DropMethodName): method is AcDropMethod => method === "ac-effective" || method === "ac-exact";

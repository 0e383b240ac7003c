/** Who the paper is for: the office that reviews, the inspector on site, the owner. */
export const PACKET_SETS = ["submittal", "field", "owner"] as const;
export type PacketSet = (typeof PACKET_SETS)[number];

export const SET_NAMES: Readonly<Record<PacketSet, string>> = { submittal: "Submittal set", field: "Field set", owner: "Owner's set" };

/** What the sheet numbers of a set begin with. */
export const SET_LETTERS: Readonly<Record<PacketSet, string>> = { submittal: "P", field: "F", owner: "O" };

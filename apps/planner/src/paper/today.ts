/** The day, as the command line dates a packet: by universal time. */
export const today = (): string => new Date().toISOString().slice(0, 10);

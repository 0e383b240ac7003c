/** What the command's exit says to a script. */
export const EXIT = { ready: 0, findings: 1, badInput: 2, environment: 3 } as const;

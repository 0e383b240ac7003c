/** A person's or a machine's wish to end. */
export interface Stop {
  /** Asked once: finish what is begun. */
  readonly asked: boolean;
  /** Resolves when asked once. */
  readonly first: Promise<void>;
  /** Resolves when asked twice: end now. */
  readonly now: Promise<void>;
  /** Gives the signals back. */
  release(): void;
}

const SIGNALS = ["SIGINT", "SIGTERM"] as const;

/** Counts SIGINT and SIGTERM in place of ending by them; `say` is told at the first. */
export function stopOnSignals(say: () => void): Stop {
  let count = 0;
  let end: () => void = () => undefined;
  let begin: () => void = () => undefined;
  const first = new Promise<void>((resolve) => {
    begin = resolve;
  });
  const now = new Promise<void>((resolve) => {
    end = resolve;
  });
  const heard = () => {
    count += 1;
    if (count > 1) end();
    else {
      say();
      begin();
    }
  };
  for (const signal of SIGNALS) process.on(signal, heard);
  return {
    get asked() {
      return count > 0;
    },
    first,
    now,
    release: () => {
      for (const signal of SIGNALS) process.off(signal, heard);
    },
  };
}

import { type Counts, printCounts } from "./row.js";

/** A line that tells how far a run is. */
export interface Progress {
  /** `made` of `toMake` are made; the counts include what stood already. */
  tell(made: number, counts: Counts): void;
  /** Takes the line away. */
  end(): void;
}

const silent: Progress = { tell: () => undefined, end: () => undefined };
const WINDOW = 200;

/** Progress on a terminal, at most five times a second; silent when the stream is none. */
export function progressOn(stream: NodeJS.WriteStream, toMake: number, now: () => number): Progress {
  if (!stream.isTTY) return silent;
  const times = [now()];
  let shown = 0;
  return {
    tell(made, counts) {
      const time = now();
      times.push(time);
      if (times.length > WINDOW) times.shift();
      if (time - shown < 200 && made < toMake) return;
      shown = time;
      stream.write(`\r\u001b[K${printProgress({ made, toMake, rate: rateOf(times), counts }).slice(0, Math.max(20, (stream.columns ?? 80) - 1))}`);
    },
    end: () => void stream.write("\r\u001b[K"),
  };
}

// Over the last jobs alone: the first ones wait for the browser to start.
function rateOf(times: readonly number[]): number {
  const seconds = ((times.at(-1) ?? 0) - (times[0] ?? 0)) / 1000;
  return seconds > 0 ? (times.length - 1) / seconds : 0;
}

/** One line; `rate` in packets a second. */
export function printProgress({ made, toMake, rate, counts }: { made: number; toMake: number; rate: number; counts: Counts }): string {
  const left = rate > 0 ? `, ${printTime((toMake - made) / rate)} left` : "";
  return `${made}/${toMake}  ${rate.toFixed(1)}/s${left}  ${printCounts(counts)}`;
}

function printTime(seconds: number): string {
  if (seconds < 90) return `${Math.ceil(seconds)} s`;
  return seconds < 5400 ? `${Math.round(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;
}

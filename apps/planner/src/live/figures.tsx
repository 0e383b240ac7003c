import type { ShownLoad, ShownRun } from "../work/digest.js";

const share = (value: number, of: number): number => Math.max(0, Math.min(100, (value / of) * 100));
const whole = (numeral: string): string => String(Math.round(Number(numeral)));
const tenth = (numeral: string): string => String(Math.round(Number(numeral) * 10) / 10);

/** A bar whose length and number say the same; the line across it is the limit. */
function Bar({ says, value, most, limit }: { readonly says: string; readonly value: number; readonly most: number; readonly limit: number }) {
  return (
    <figure class="bar">
      <figcaption>{says}</figcaption>
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <rect class="frame" x="0" y="1" width="100" height="6" />
        <rect class="fill" x="0" y="1" width={share(value, most)} height="6" />
        <path class="limit" d={`M${share(limit, most)} 0v8`} />
      </svg>
    </figure>
  );
}

export function LoadBar({ load }: { readonly load: ShownLoad }) {
  const amperes = Number(load.amperes);
  return (
    <section aria-labelledby="load">
      <h3 id="load">Load on the service</h3>
      <Bar
        says={`${whole(load.amperesWithout)} A now, ${whole(load.amperes)} A with the new work, of ${load.rating} A`}
        value={amperes}
        most={Math.max(load.rating * 1.1, amperes)}
        limit={load.rating}
      />
      <p class="hint">
        {Number(load.margin) >= 0 ? `${whole(load.margin)} A to spare` : `${whole(String(-Number(load.margin)))} A too much`};{" "}
        {/method$/.test(load.method) ? load.method : `${load.method} method`}. The line across the bar is the service.
      </p>
    </section>
  );
}

export function RunFigures({ run }: { readonly run: ShownRun }) {
  const id = `figures-${run.id}`;
  const drop = Number(run.dropPercent);
  const low = Math.min(...run.profile.map(({ volts }) => Number(volts)));
  const far = Math.max(1, ...run.profile.map(({ feet }) => Number(feet)));
  const floor = Math.min(112, low - 1);
  const x = (feet: string) => 4 + (Number(feet) / far) * 92;
  const y = (volts: string) => 4 + ((120 - Number(volts)) / (120 - floor)) * 32;
  return (
    <section aria-labelledby={id}>
      <h3 id={id}>{run.name}</h3>
      <p>
        {run.rating} A breaker, {run.volts} V, {run.wires} wires with the ground, {tenth(run.feet)} ft.
      </p>
      <table class="figures">
        <caption class="unseen">Stretches of {run.name}</caption>
        <thead>
          <tr>
            <th scope="col">Stretch</th>
            <th scope="col">Wire</th>
            <th scope="col">Ground</th>
            <th scope="col">Raceway</th>
          </tr>
        </thead>
        <tbody>
          {run.segments.map((segment) => (
            <tr key={segment.name}>
              <th scope="row">{segment.name}</th>
              <td>{segment.wire}</td>
              <td>{segment.grounding}</td>
              <td>
                {segment.tradeSize === null ? segment.method : `${segment.tradeSize} in ${segment.method}`}
                {segment.fillPercent !== null && `, ${whole(segment.fillPercent)} % full`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Bar
        says={`Voltage drop ${tenth(run.dropPercent)} % on the worst leg${run.fromServicePercent ? `, ${tenth(run.fromServicePercent)} % from the service` : ""}; ${run.limitPercent} % is the aim`}
        value={drop}
        most={Math.max(run.limitPercent * 1.6, drop)}
        limit={run.limitPercent}
      />
      <figure class="profile">
        <figcaption>Volts along the way at full load: {run.profile.map(({ name, volts }) => `${name} ${tenth(volts)} V`).join(", ")}</figcaption>
        <svg viewBox="0 0 100 40" aria-hidden="true">
          <path class="frame-line" d="M4 2v34h94" />
          <polyline class="line" points={run.profile.map((point) => `${x(point.feet)},${y(point.volts)}`).join(" ")} />
          {run.profile.map((point) => (
            <circle class="dot" cx={x(point.feet)} cy={y(point.volts)} r="1.4" key={point.name} />
          ))}
        </svg>
      </figure>
      {run.boxes.length > 0 && (
        <ul class="boxes">
          {run.boxes.map((box) => (
            <li key={box.name}>
              {box.byDimensions ? (
                `${box.name}: sized by its dimensions`
              ) : (
                <Bar
                  says={`${box.name}: ${tenth(box.required)} of ${box.volume} in³ taken`}
                  value={Number(box.required)}
                  most={Math.max(box.volume * 1.1, Number(box.required))}
                  limit={box.volume}
                />
              )}
            </li>
          ))}
        </ul>
      )}
      {run.longest.length > 0 && (
        <details class="more">
          <summary>How far each wire size reaches</summary>
          <table class="figures">
            <caption>
              The whole way in one size, at {run.limitPercent} % drop; yours is {tenth(run.feet)} ft
            </caption>
            <thead>
              <tr>
                <th scope="col">Wire</th>
                <th scope="col">Reaches</th>
                <th scope="col">Enough here?</th>
              </tr>
            </thead>
            <tbody>
              {run.longest.map(({ size, says, feet }) => (
                <tr key={size}>
                  <th scope="row">{says}</th>
                  <td>{whole(feet)} ft</td>
                  <td>{Number(feet) >= Number(run.feet) ? "yes" : "no"}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </section>
  );
}

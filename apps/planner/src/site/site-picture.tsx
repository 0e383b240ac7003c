import { type Mark, markerOf, setbacksOf } from "@branchwork/sheets";
import { bareLength, type LengthUnit, shownLength } from "../job/length-text.js";
import { isClosed, isPointKind, middle, type Place, placesOf, type Rectangle, type SiteThing } from "./site-model.js";

/** What the labels of the things tell already; it is nothing to press either. */
const UNTOLD = { "aria-hidden": true } as const;

type Put = (place: Place) => Place;
const pointsText = (places: readonly Place[]): string => places.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");

/** Dashes by which lines are told apart, as the printed plan has them. */
const DASH: Readonly<Record<string, string>> = { lot: "18 4 3 4", drive: "5 3", trench: "11 5", overhead: "14 3 2 3 2 3" };

export function Body({ thing, put, width }: { readonly thing: SiteThing; readonly put: Put; readonly width: number }) {
  const places = placesOf(thing).map(put);
  if (places.length === 0) return null;
  if (thing.is === "point") return <Marker thing={thing} at={places[0]!} width={width} />;
  const dash = thing.is === "route" ? (thing.buried ? DASH.trench : undefined) : DASH[thing.is === "outline" ? thing.kind : thing.is];
  const given = { points: pointsText(places), class: `line ${thing.is}`, "stroke-dasharray": dash };
  const named = thing.is === "outline" || thing.is === "overhead";
  const [x, y] = middle(places);
  return (
    <>
      {isClosed(thing) ? <polygon {...given} /> : <polyline {...given} />}
      {isClosed(thing) ? <polygon points={given.points} class={`reach ${thing.is}`} /> : <polyline points={given.points} class="reach way" />}
      {named && (
        <text x={x} y={y} class="letters" text-anchor="middle" dy="0.35em">
          {thing.name}
        </text>
      )}
    </>
  );
}

function Marker({ thing, at: [x, y], width }: { readonly thing: SiteThing; readonly at: Place; readonly width: number }) {
  const leftward = x > width * 0.72; // a name at the right edge would leave the picture
  return (
    <>
      <circle cx={x} cy={y} r={14} class="reach" />
      {isPointKind(thing.kind) ? (
        markerOf(thing.kind, [x, y]).map((mark, i) => <MarkShape mark={mark} key={String(i)} />)
      ) : (
        <circle cx={x} cy={y} r={5} class="mark" stroke-width={1} />
      )}
      <text x={leftward ? x - 10 : x + 10} y={y - 6} text-anchor={leftward ? "end" : "start"} class={thing.kind === "outlet" ? "letters bold" : "letters"}>
        {thing.name}
      </text>
    </>
  );
}

function MarkShape({ mark }: { readonly mark: Mark }) {
  const style = (fill?: "black" | "white") => `mark ${fill ?? "none"}`;
  if (mark.is === "circle") return <circle cx={mark.at[0]} cy={mark.at[1]} r={mark.r} class={style(mark.fill)} />;
  if (mark.is !== "path") return null;
  return mark.closed ? (
    <polygon points={pointsText(mark.points)} class={style(mark.fill)} />
  ) : (
    <polyline points={pointsText(mark.points)} class={style(mark.fill)} />
  );
}

/** Lengths of the sides of the thing at hand. */
export function Lengths({ thing, put, unit }: { readonly thing: SiteThing; readonly put: Put; readonly unit: LengthUnit }) {
  const places = placesOf(thing);
  return (
    <g {...UNTOLD}>
      {places.map((a, i) => {
        const b = places[i + 1] ?? (isClosed(thing) && places.length > 2 ? places[0] : undefined);
        if (b === undefined) return null;
        const [p, q] = [put(a), put(b)];
        const upright = Math.abs(q[1] - p[1]) > Math.abs(q[0] - p[0]);
        return (
          <text
            key={String(i)}
            x={(p[0] + q[0]) / 2 + (upright ? 14 : 0)}
            y={(p[1] + q[1]) / 2 + (upright ? 4 : -14)}
            class="letters figure"
            text-anchor={upright ? "start" : "middle"}
          >
            {shownLength(Math.hypot(b[0] - a[0], b[1] - a[1]), unit)}
          </text>
        );
      })}
    </g>
  );
}

/** The least distance from each outlet to the lot line, which towns ask. */
export function Setbacks({ things, put, unit }: { readonly things: readonly SiteThing[]; readonly put: Put; readonly unit: LengthUnit }) {
  const lot = things.find(({ is }) => is === "lot");
  const corners = lot === undefined ? [] : placesOf(lot);
  if (corners.length < 3) return null;
  const points = things.flatMap((thing) => {
    const at = placesOf(thing)[0];
    return thing.kind === "outlet" && thing.is === "point" && at !== undefined ? [{ kind: "outlet" as const, name: thing.name, at }] : [];
  });
  return (
    <g {...UNTOLD}>
      {setbacksOf({ lot: corners, points }).map(({ from, to, distance_ft }, i) => {
        const [p, q] = [put(from), put(to)];
        const level = Math.abs(q[0] - p[0]) >= Math.abs(q[1] - p[1]);
        const rightward = q[0] > p[0];
        return (
          <g key={String(i)}>
            <line x1={p[0]} y1={p[1]} x2={q[0]} y2={q[1]} class="setback" />
            <text
              x={level ? q[0] + (rightward ? -4 : 4) : (p[0] + q[0]) / 2 + 5}
              y={level ? q[1] + 14 : (p[1] + q[1]) / 2 + 4}
              class="letters small"
              text-anchor={level && rightward ? "end" : "start"}
            >
              {shownLength(distance_ft, unit)} to lot line
            </text>
          </g>
        );
      })}
    </g>
  );
}

const STEPS: Readonly<Record<LengthUnit, readonly number[]>> = {
  ft: [5, 10, 20, 50, 100, 200, 500, 1000],
  m: [2, 5, 10, 20, 50, 100, 200, 500].map((metres) => metres / 0.3048),
};

/** Squares of ruled paper, with the distance at the edges. */
export function Rule({ view, put, unit, perFoot }: { readonly view: Rectangle; readonly put: Put; readonly unit: LengthUnit; readonly perFoot: number }) {
  const step = STEPS[unit].find((each) => each * perFoot >= 34) ?? STEPS[unit].at(-1)!;
  const stops = (from: number, length: number) =>
    Array.from({ length: Math.min(200, Math.floor((from + length) / step) - Math.ceil(from / step) + 1) }, (_, i) => (Math.ceil(from / step) + i) * step);
  const [right, top] = [view.left + view.width, view.bottom + view.height];
  return (
    <g {...UNTOLD} class="ruled">
      {stops(view.left, view.width).map((x) => {
        const [px] = put([x, 0]);
        return (
          <g key={`x${x}`}>
            <line x1={px} y1={0} x2={px} y2={put([0, view.bottom])[1]} />
            <text x={px + 2} y={put([0, view.bottom])[1] - 3}>
              {bareLength(x, unit)}
            </text>
          </g>
        );
      })}
      {stops(view.bottom, view.height).map((y) => {
        const [, py] = put([0, y]);
        return (
          <g key={`y${y}`}>
            <line x1={0} y1={py} x2={put([right, top])[0]} y2={py} />
            <text x={2} y={py - 2}>
              {bareLength(y, unit)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

export function NorthArrow({ degrees, at: [x, y] }: { readonly degrees: number; readonly at: Place }) {
  return (
    <g transform={`translate(${x} ${y})`} {...UNTOLD}>
      <g transform={`rotate(${degrees})`}>
        <path d="M0 -15L5 12L0 7L-5 12Z" class="mark black" />
      </g>
      <text x={0} y={27} class="letters small" text-anchor="middle">
        north
      </text>
    </g>
  );
}

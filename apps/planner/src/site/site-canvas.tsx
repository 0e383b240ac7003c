import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { bareLength, type LengthUnit, STRIDE, snapped } from "../job/length-text.js";
import { contains, extent, isClosed, leastCorners, type Place, placesOf, type Rectangle, type SiteThing } from "./site-model.js";
import { Body, Lengths, NorthArrow, Rule, Setbacks } from "./site-picture.js";

/** A thing at hand, and one of its corners where it is a corner that is moved. */
export interface Chosen {
  readonly key: string;
  readonly corner: number | null;
}
export interface Moved {
  readonly key: string;
  readonly corners: readonly (Place | null)[];
}
interface Drag extends Chosen {
  readonly pointer: number;
  readonly from: Place;
  /** As it was when it was taken hold of. */
  readonly began: SiteThing;
  moving: boolean;
}

const ARROWS: Readonly<Record<string, Place>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const ZOOMS = [1, 1.5, 2.25, 3.4] as const;
/** How far a finger or the mouse may tremble before it moves something, in pixels. */
const TREMBLE = 4;

export interface CanvasProps {
  readonly things: readonly SiteThing[];
  readonly unit: LengthUnit;
  readonly north: number;
  readonly chosen: Chosen | null;
  readonly choose: (chosen: Chosen | null) => void;
  /** Shown while a drag lasts; null when it is over or given up. */
  readonly moving: (moved: Moved | null) => void;
  readonly move: (thing: SiteThing, corners: readonly (Place | null)[], key: string) => void;
  readonly insert: (thing: SiteThing, before: number, place: Place) => void;
  readonly remove: (chosen: Chosen) => void;
}

/** The site from above. What stands on it is moved by mouse, finger or arrow keys. */
export function SiteCanvas({ things, unit, north, chosen, choose, moving, move, insert, remove }: CanvasProps) {
  const room = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const [width, setWidth] = useState(0);
  const [zoom, setZoom] = useState(0);
  const [view, setView] = useState<Rectangle>(() => extent(things));
  const drag = useRef<Drag | null>(null);

  // Measured before it is first painted, so that nothing on it jumps under a hand.
  useLayoutEffect(() => {
    setWidth(Math.max(200, room.current!.clientWidth));
    const watch = new ResizeObserver(([entry]) => setWidth(Math.max(200, Math.floor(entry!.contentRect.width))));
    watch.observe(room.current!);
    // Where the browser does not heed touch-action in a drawing: while something is held, a finger scrolls nothing.
    const hold = (event: TouchEvent) => {
      if (drag.current !== null && event.cancelable) event.preventDefault();
    };
    const drawing = svg.current!;
    drawing.addEventListener("touchmove", hold, { passive: false });
    return () => {
      watch.disconnect();
      drawing.removeEventListener("touchmove", hold);
    };
  }, []);
  // The picture grows with what is moved out of it, and never shifts under the hand.
  const needed = extent(things);
  useEffect(() => {
    if (
      drag.current === null &&
      !contains(view, { ...needed, left: needed.left + 2, bottom: needed.bottom + 2, width: needed.width - 4, height: needed.height - 4 })
    )
      setView(needed);
  });

  const perFoot = Math.min((width || 600) / view.width, Math.max(280, Math.min(620, innerHeight * 0.72)) / view.height) * ZOOMS[zoom]!;
  const put = ([x, y]: Place): Place => [(x - view.left) * perFoot, (view.bottom + view.height - y) * perFoot];
  const feetAt = (event: PointerEvent): Place => {
    const box = svg.current!.getBoundingClientRect();
    return [(event.clientX - box.left) / perFoot + view.left, view.bottom + view.height - (event.clientY - box.top) / perFoot];
  };

  const begin = (thing: SiteThing, corner: number | null) => (event: PointerEvent) => {
    if (event.button !== 0 || drag.current !== null) return;
    event.stopPropagation();
    const wasChosen = chosen?.key === thing.key;
    choose({ key: thing.key, corner });
    // A finger on something large scrolls the page until that thing is chosen.
    if (event.pointerType === "touch" && thing.list !== null && corner === null && !wasChosen) return;
    svg.current!.setPointerCapture(event.pointerId);
    drag.current = { key: thing.key, corner, pointer: event.pointerId, from: feetAt(event), began: thing, moving: false };
  };
  const draggedTo = (held: Drag, event: PointerEvent) => {
    const [x, y] = feetAt(event);
    const by: Place = [x - held.from[0], y - held.from[1]];
    if (Math.hypot(...by) * perFoot >= TREMBLE) held.moving = true;
    return held.moving ? shifted(held.began.corners, held.corner, by, unit) : null;
  };
  const dragged = (event: PointerEvent) => {
    const held = drag.current;
    if (held === null || event.pointerId !== held.pointer) return;
    const corners = draggedTo(held, event);
    if (corners !== null) moving({ key: held.key, corners });
  };
  const dropped = (event: PointerEvent) => {
    const held = drag.current;
    if (held === null || event.pointerId !== held.pointer) return;
    const corners = event.type === "pointerup" ? draggedTo(held, event) : null;
    giveUp();
    if (corners !== null) move(held.began, corners, "");
  };
  const giveUp = () => {
    drag.current = null;
    moving(null);
  };

  const keys = (thing: SiteThing, corner: number | null) => (event: KeyboardEvent) => {
    if (event.key === "Escape") return drag.current === null ? choose(null) : giveUp();
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Delete" || event.key === "Backspace") {
      event.preventDefault();
      return remove({ key: thing.key, corner });
    }
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      return choose({ key: thing.key, corner });
    }
    const arrow = ARROWS[event.key];
    if (arrow === undefined) return;
    event.preventDefault();
    const stride = STRIDE[unit] * (event.shiftKey ? 10 : 1);
    move(thing, shifted(thing.corners, corner, [arrow[0] * stride, arrow[1] * stride], null), `site ${thing.key} ${corner}`);
  };

  const said = (place: Place | null | undefined) =>
    place ? `${bareLength(place[0], unit)} ${unit} across, ${bareLength(place[1], unit)} ${unit} up` : "its place cannot be read";
  const open = things.find(({ key }) => key === chosen?.key);
  return (
    <div class="site-room">
      <div class="site-tools">
        <button type="button" disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
          Smaller
        </button>
        <button type="button" disabled={zoom === ZOOMS.length - 1} onClick={() => setZoom(zoom + 1)}>
          Larger
        </button>
        <button
          type="button"
          onClick={() => {
            setZoom(0);
            setView(needed);
          }}
        >
          Show all
        </button>
      </div>
      <div class="site-frame" ref={room} tabIndex={-1}>
        <svg
          ref={svg}
          class={width === 0 ? "site unmeasured" : "site"}
          width={Math.round(view.width * perFoot)}
          height={Math.round(view.height * perFoot)}
          role="application"
          aria-label="Site plan. The tab key goes from thing to thing; the arrow keys move it, with Shift ten times as far; Delete takes it off."
          onPointerMove={dragged}
          onPointerUp={dropped}
          onPointerCancel={dropped}
          onPointerDown={() => choose(null)}
        >
          <Rule view={view} put={put} unit={unit} perFoot={perFoot} />
          {things.map((thing) => (
            // biome-ignore lint/a11y/useSemanticElements: there is no button element in a drawing
            <g
              key={thing.key}
              role="button"
              tabindex={0}
              class={`thing ${thing.is}${chosen?.key === thing.key ? " chosen" : ""}`}
              data-thing={thing.key}
              aria-pressed={chosen?.key === thing.key}
              aria-label={`${thing.name}: ${thing.list === null ? said(thing.corners[0]) : `${thing.corners.length} corners, the first ${said(thing.corners[0])}`}`}
              onPointerDown={begin(thing, null)}
              onFocus={() => {
                if (chosen?.key !== thing.key) choose({ key: thing.key, corner: null });
              }}
              onKeyDown={keys(thing, null)}
            >
              <Body thing={thing} put={put} width={view.width * perFoot} />
            </g>
          ))}
          <Setbacks things={things} put={put} unit={unit} />
          {open !== undefined && open.list !== null && (
            <>
              <Lengths thing={open} put={put} unit={unit} />
              {placesOf(open).length === open.corners.length &&
                legs(open).map(([a, b, before]) => {
                  const [x, y] = put([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
                  return (
                    // biome-ignore lint/a11y/useSemanticElements: there is no button element in a drawing
                    <g
                      key={`new-${before}`}
                      role="button"
                      tabindex={0}
                      class="new-corner"
                      aria-label={`Add a corner to ${open.name} between corner ${before} and the next`}
                      onPointerDown={(event) => event.stopPropagation()}
                      onClick={() => insert(open, before, [snapped((a[0] + b[0]) / 2, unit), snapped((a[1] + b[1]) / 2, unit)])}
                      onKeyDown={(event) => {
                        if (event.key !== "Enter" && event.key !== " ") return;
                        event.preventDefault();
                        insert(open, before, [snapped((a[0] + b[0]) / 2, unit), snapped((a[1] + b[1]) / 2, unit)]);
                      }}
                    >
                      <circle cx={x} cy={y} r={12} class="reach" />
                      <path d={`M${x - 5} ${y}h10M${x} ${y - 5}v10`} class="ink" />
                    </g>
                  );
                })}
              {open.corners.map((corner, i) => {
                if (corner === null) return null;
                const [x, y] = put(corner);
                const at = chosen?.corner === i;
                return (
                  // biome-ignore lint/a11y/useSemanticElements: there is no button element in a drawing
                  <g
                    key={`corner-${String(i)}`}
                    role="button"
                    tabindex={0}
                    class={at ? "corner chosen" : "corner"}
                    aria-pressed={at}
                    aria-label={`Corner ${i + 1} of ${open.name}: ${said(corner)}${open.corners.length > leastCorners(open) ? "" : "; it cannot be taken out"}`}
                    onPointerDown={begin(open, i)}
                    onFocus={() => {
                      if (!at) choose({ key: open.key, corner: i });
                    }}
                    onKeyDown={keys(open, i)}
                  >
                    <circle cx={x} cy={y} r={14} class="reach" />
                    <rect x={x - 5} y={y - 5} width={10} height={10} class="handle" />
                  </g>
                );
              })}
            </>
          )}
          <NorthArrow degrees={north} at={[view.width * perFoot - 26, 30]} />
        </svg>
      </div>
    </div>
  );
}

/** The stretches between corners, each with the place in the list of a corner set between its ends. */
function legs(thing: SiteThing): readonly (readonly [Place, Place, number])[] {
  const places = placesOf(thing);
  return places.flatMap((a, i) => {
    const b = places[i + 1] ?? (isClosed(thing) ? places[0] : undefined);
    return b === undefined ? [] : [[a, b, i + 1] as const];
  });
}

/** The corners moved: one of them, or all alike. By hand the first that moves lands on the half foot, and the shape is kept. */
function shifted(corners: readonly (Place | null)[], corner: number | null, by: Place, unit: LengthUnit | null): readonly (Place | null)[] {
  const lead = corner === null ? corners.find((each) => each !== null) : corners[corner];
  if (!lead) return corners;
  const to: Place = unit === null ? [lead[0] + by[0], lead[1] + by[1]] : [snapped(lead[0] + by[0], unit), snapped(lead[1] + by[1], unit)];
  const step: Place = [to[0] - lead[0], to[1] - lead[1]];
  return corners.map((each, i) => (each === null || (corner !== null && corner !== i) ? each : [each[0] + step[0], each[1] + step[1]]));
}

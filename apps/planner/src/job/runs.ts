import { at, listAt, type Path, printPath, textAt } from "./document.js";

/** A circuit or feeder of the job as written, whether or not it can be read yet. */
export interface WrittenRun {
  readonly path: Path;
  readonly panelPath: Path;
  readonly panelName: string;
  readonly kind: "circuit" | "feeder";
  readonly id: string;
  readonly name: string;
  readonly serves: string;
}

/** A panel of the job as written, the service panel first. */
export interface WrittenPanel {
  readonly path: Path;
  readonly name: string;
  readonly spaces: number;
}

export const SERVICE_PANEL: Path = ["service", "panel"];

export function writtenPanels(plain: unknown, path: Path = SERVICE_PANEL): readonly WrittenPanel[] {
  const spaces = at(plain, [...path, "spaces"]);
  return [
    { path, name: textAt(plain, [...path, "name"]) || "Panel", spaces: typeof spaces === "number" && spaces <= 84 ? Math.floor(spaces) : 0 },
    ...listAt(plain, [...path, "feeders"]).flatMap((_, i) => writtenPanels(plain, [...path, "feeders", i, "panel"])),
  ];
}

export function writtenRuns(plain: unknown): readonly WrittenRun[] {
  return writtenPanels(plain).flatMap((panel) =>
    (["feeders", "circuits"] as const).flatMap((list) =>
      listAt(plain, [...panel.path, list]).map((_, i): WrittenRun => {
        const path = [...panel.path, list, i];
        return {
          path,
          panelPath: panel.path,
          panelName: panel.name,
          kind: list === "feeders" ? "feeder" : "circuit",
          id: textAt(plain, [...path, "id"]),
          name: textAt(plain, [...path, "name"]) || "Unnamed circuit",
          serves: list === "feeders" ? "subpanel" : textAt(plain, [...path, "serves"]),
        };
      }),
    ),
  );
}

export interface Occupied {
  readonly space: number;
  readonly says: string;
  /** Path of what takes it. */
  readonly path: Path;
  readonly now: boolean;
}

/** What takes each space of a panel: what the directory lists, and the new breakers. */
export function occupied(plain: unknown, panelPath: Path): readonly Occupied[] {
  const directory = listAt(plain, [...panelPath, "directory"]).flatMap((row, i): readonly Occupied[] => {
    const space = at(row, ["space"]);
    if (typeof space !== "number") return [];
    const path = [...panelPath, "directory", i];
    const says = textAt(row, ["serves"]);
    return (at(row, ["poles"]) === 2 ? [space, space + 2] : [space]).map((taken) => ({ space: taken, says, path, now: true }));
  });
  const fresh = writtenRuns(plain)
    .filter((run) => printPath(run.panelPath) === printPath(panelPath))
    .flatMap((run) =>
      listAt(plain, [...run.path, "breaker", "spaces"]).flatMap((space): readonly Occupied[] =>
        typeof space === "number" ? [{ space, says: run.name, path: run.path, now: false }] : [],
      ),
    );
  return [...directory, ...fresh];
}

/** The first free space, or pair one above the other, that nothing takes; empty where there is none. */
export function freeSpaces(plain: unknown, panelPath: Path, poles: 1 | 2, except: string | null = null): readonly number[] {
  const panel = writtenPanels(plain).find(({ path }) => printPath(path) === printPath(panelPath));
  const taken = new Set(
    occupied(plain, panelPath)
      .filter(({ path }) => printPath(path) !== except)
      .map(({ space }) => space),
  );
  for (let space = 1; space <= (panel?.spaces ?? 0); space++) {
    const wanted = poles === 2 ? [space, space + 2] : [space];
    if (wanted.every((each) => each <= panel!.spaces && !taken.has(each))) return wanted;
  }
  return [];
}

/** An id that no part of the tree has. */
export function freeId(plain: unknown, wanted: string): string {
  const ids = new Set([...writtenRuns(plain).map(({ id }) => id), ...writtenPanels(plain).map(({ path }) => textAt(plain, [...path, "id"]))]);
  if (!ids.has(wanted)) return wanted;
  for (let i = 2; ; i++) if (!ids.has(`${wanted}-${i}`)) return `${wanted}-${i}`;
}

import { ADVISED_DROP, type Basis, type Edition, unamended } from "@branchwork/engine";
import { type Amendment, PARAMETERS, targetOf } from "./amendment-schema.js";
import { danglingNames } from "./dangling.js";
import { nameOneOf } from "./name-near.js";
import type { Overlay } from "./schema.js";
import { type AmendmentTargets, ENGINE_TARGETS } from "./targets.js";

export interface AmendmentIssue {
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}

/** The basis with what could not be applied; a job must not be called ready while `issues` has an entry. */
export interface AmendedBasis extends Basis {
  readonly issues: readonly AmendmentIssue[];
}

/** The adopted code with an overlay's amendments. An amendment that does not fit is left out and returned as an issue. */
export function basisFrom(overlay: Overlay | null, edition: Edition, targets: AmendmentTargets = ENGINE_TARGETS): AmendedBasis {
  const plain = unamended(edition);
  if (overlay === null) return { ...plain, issues: [] };
  const issues: AmendmentIssue[] = [...danglingNames(overlay, targets)];
  if (overlay.edition !== undefined && overlay.edition !== edition)
    issues.push({
      path: "edition",
      what: `the overlay was written for NFPA 70-${overlay.edition}, the job is to NFPA 70-${edition}`,
      mend: "ask the jurisdiction which edition is in force and correct the job or the overlay",
    });
  const fitting: Amendment[] = [];
  const named = new Map<string, Amendment>();
  for (const [index, amendment] of overlay.amendments.entries()) {
    const path = `amendments.${index}`;
    const target = targetOf(amendment);
    const earlier = named.get(target);
    const wrong = earlier === undefined ? misfit(amendment, path, edition, targets) : { path, what: `${target} is amended twice`, mend: keepOne(earlier) };
    named.set(target, earlier ?? amendment);
    if (wrong === null) fitting.push(amendment);
    else issues.push(wrong);
  }
  const of = <T extends Amendment["target"]>(target: T) => fitting.filter((a): a is Extract<Amendment, { target: T }> => a.target === target);
  const [relief] = of("gfci-rv-outlet");
  const { riser, load_calculation } = overlay;
  return {
    ...plain,
    waivedChecks: Object.fromEntries(of("check").map(({ check, reason, citation }) => [check, { reason, citation }])),
    changedVerdicts: Object.fromEntries(
      of("verdict").map(({ check, replaces, value, reason, citation }) => [check, { from: replaces, to: value, reason, citation }]),
    ),
    addedChecks: [...of("added-check").map(addedCheck), ...ribbon(overlay)],
    leastCover: Object.fromEntries(of("cover").map(({ row, value, replaces, citation }) => [row, { inches: value, replaces, citation }])),
    methodLimits: overlay.wiring_methods.map(({ places, methods, reason, citation }) => ({ places, methods, reason, citation })),
    riserMethods: riser === undefined ? null : { methods: riser.methods, reason: riser.reason, citation: riser.citation },
    drop: localDrop(of("parameter"), of("drop-force")),
    gfciRelief: relief === undefined ? null : { reason: relief.reason, citation: relief.citation },
    loadMethods:
      load_calculation === undefined ? null : { methods: load_calculation.methods, reason: load_calculation.reason, citation: load_calculation.citation },
    issues,
  };
}

/** How one of two amendments of a target goes: the earlier one may stand in a file that is not the author's own. */
function keepOne(earlier: Amendment): string {
  const name = earlier.id ?? ("check" in earlier ? earlier.check : null);
  return name === null
    ? "keep one of the two; to remove one of an extended file, give it an id there"
    : `keep one of the two; where the first stands in the extended file, remove it under changes: { op: remove, at: amendments.${name}, reason: ..., citation: ... }`;
}

const addedCheck = ({ check, title, look, only_trench, reason, citation }: Extract<Amendment, { target: "added-check" }>): Basis["addedChecks"][number] => ({
  id: check,
  title,
  look,
  onlyTrench: only_trench,
  reason,
  citation,
});

/** A ribbon that the jurisdiction asks is looked at in the open trench. */
const ribbon = ({ warning_ribbon }: Overlay): Basis["addedChecks"] =>
  warning_ribbon === undefined
    ? []
    : [
        {
          id: "local-warning-ribbon",
          title: "Warning ribbon over buried wiring",
          look: warning_ribbon.says,
          onlyTrench: true,
          reason: "a ribbon marks the route",
          citation: warning_ribbon.citation,
        },
      ];

type Percent = Extract<Amendment, { target: "parameter" }>;
type Force = Extract<Amendment, { target: "drop-force" }>;

function localDrop(percents: readonly Percent[], forces: readonly Force[]): Basis["drop"] {
  const all = [...percents, ...forces];
  if (all.length === 0) return null;
  const percent = (name: Percent["parameter"]) => percents.find((p) => p.parameter === name)?.value;
  return {
    limitPercent: percent("drop-limit-percent") ?? ADVISED_DROP.limitPercent,
    wholeWayPercent: percent("drop-whole-way-percent") ?? ADVISED_DROP.wholeWayPercent,
    required: forces.some((f) => f.value === "required"),
    reason: [...new Set(all.map((a) => a.reason))].join("; "),
    citation: [...new Set(all.map((a) => a.citation))].join("; "),
  };
}

/** Why an amendment cannot be applied; null when it fits. */
function misfit(a: Amendment, path: string, edition: Edition, targets: AmendmentTargets): AmendmentIssue | null {
  const at = (field: string, what: string, mend: string): AmendmentIssue => ({ path: `${path}.${field}`, what, mend });
  switch (a.target) {
    case "cover": {
      if (targets.cover !== undefined) {
        const cells = Object.hasOwn(targets.cover, a.row) ? targets.cover[a.row] : undefined;
        if (cells === undefined) return at("row", `the cover table has no row "${a.row}"`, `name one of ${Object.keys(targets.cover).join(", ")}`);
        if (!cells.includes(String(a.replaces)))
          return at("replaces", `${a.replaces} in is not in row "${a.row}" (${cells.join(", ")})`, "compare the amendment with this edition's table");
      }
      return a.value > a.replaces
        ? null
        : at("value", `${a.value} in is not more than the ${a.replaces} in it replaces`, "an overlay may only ask for more cover");
    }
    case "check":
    case "verdict": {
      if (targets.checks !== undefined && !targets.checks.includes(a.check))
        return at("check", `there is no check "${a.check}"`, nameOneOf(a.check, targets.checks));
      return a.target === "verdict" && a.replaces === a.value
        ? at("value", `"${a.value}" is the verdict it replaces`, "give another, or leave the amendment out")
        : null;
    }
    case "added-check":
      return targets.checks?.includes(a.check) ? at("check", `"${a.check}" is a check of the code already`, "give the added check an id of its own") : null;
    case "parameter": {
      const base = PARAMETERS[a.parameter];
      if (a.replaces !== base) return at("replaces", `${a.parameter} is ${base}, not ${a.replaces}`, `write replaces: ${base}`);
      return a.value === base ? at("value", `${a.value} is the value it replaces`, "give another, or leave the amendment out") : null;
    }
    case "drop-force":
      if (a.replaces !== PARAMETERS["drop-force"])
        return at("replaces", `the unamended code only advises, it is not "${a.replaces}"`, "write replaces: advisory");
      return a.value === a.replaces ? at("value", `"${a.value}" is the force it replaces`, "give the other, or leave the amendment out") : null;
    default:
      return edition === "2017"
        ? at("replaces", "the 2017 edition asks no GFCI of 30 and 50 A RV outlets", "leave the amendment out under this edition")
        : null;
  }
}

import { type Basis, type Edition, unamended } from "@branchwork/engine";
import type { Overlay } from "./schema.js";

export interface AmendmentIssue {
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}

/** The basis with what could not be applied; a job must not be called ready while `issues` has an entry. */
export interface AmendedBasis extends Basis {
  readonly issues: readonly AmendmentIssue[];
}

/** What amendments may name: rows of the cover table in inches with all their cells, and check ids. Left out, it is not tested. */
export interface AmendmentTargets {
  readonly cover?: Readonly<Record<string, readonly string[]>>;
  readonly checks?: readonly string[];
}

/** The adopted code with an overlay's amendments. An amendment that does not fit is left out and returned as an issue. */
export function basisFrom(overlay: Overlay | null, edition: Edition, targets: AmendmentTargets = {}): AmendedBasis {
  const issues: AmendmentIssue[] = [];
  const cover: [string, Basis["leastCover"][string]][] = [];
  const waived: [string, Basis["waivedChecks"][string]][] = [];
  if (overlay?.edition !== undefined && overlay.edition !== edition) {
    issues.push({
      path: "edition",
      what: `the overlay was written for NFPA 70-${overlay.edition}, the job is to NFPA 70-${edition}`,
      mend: "ask the jurisdiction which edition is in force and correct the job or the overlay",
    });
  }
  const named = new Set<string>();
  for (const [index, amendment] of (overlay?.amendments ?? []).entries()) {
    const path = `amendments.${index}`;
    const name = amendment.target === "cover" ? `cover ${amendment.row}` : `check ${amendment.check}`;
    if (named.has(name)) {
      issues.push({ path, what: `${name} is amended twice`, mend: "keep one of the two" });
      continue;
    }
    named.add(name);
    if (amendment.target === "check") {
      if (targets.checks && !targets.checks.includes(amendment.check)) {
        issues.push({ path: `${path}.check`, what: `there is no check "${amendment.check}"`, mend: `name one of ${targets.checks.join(", ")}` });
        continue;
      }
      waived.push([amendment.check, { reason: amendment.reason, citation: amendment.citation }]);
      continue;
    }
    const base = targets.cover;
    if (base) {
      const cells = Object.hasOwn(base, amendment.row) ? base[amendment.row] : undefined;
      if (!cells) {
        issues.push({ path: `${path}.row`, what: `the cover table has no row "${amendment.row}"`, mend: `name one of ${Object.keys(base).join(", ")}` });
        continue;
      }
      if (!cells.includes(String(amendment.replaces))) {
        issues.push({
          path: `${path}.replaces`,
          what: `${amendment.replaces} in is not in row "${amendment.row}" (${cells.join(", ")})`,
          mend: "compare the amendment with this edition's table",
        });
        continue;
      }
    }
    if (amendment.value <= amendment.replaces) {
      issues.push({
        path: `${path}.value`,
        what: `${amendment.value} in is not more than the ${amendment.replaces} in it replaces`,
        mend: "an overlay may only ask for more cover",
      });
      continue;
    }
    cover.push([amendment.row, { inches: amendment.value, replaces: amendment.replaces, citation: amendment.citation }]);
  }
  return { ...unamended(edition), waivedChecks: Object.fromEntries(waived), leastCover: Object.fromEntries(cover), issues };
}

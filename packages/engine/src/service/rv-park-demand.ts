import { type Edition, everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { rowFrom } from "../tables/code-table.js";
import { RV_SITE_DEMAND, RV_SITE_LOAD } from "../tables/rv-site-demand.js";
import type { Worked } from "../worked.js";
import { type LoadSum, loadCell, loadLine, loadRule } from "./load-line.js";

/** A site by its largest receptacle: 50 A 125/250 V, 30 A 125 V, 20 A 125 V, or a tent site. */
export type RvSite = keyof typeof RV_SITE_LOAD.rows;
const RULE = loadRule(everyEdition("551.73(A)"), "published");
const FEEDER = loadRule(everyEdition("551.73(D)"), "one-source");
const LEAST_FEEDER_AMPERES = 30;

export interface RvSites {
  readonly site: RvSite;
  readonly count: number;
  /** Load of one site in VA in place of the table's, as an older edition or the jurisdiction has it. */
  readonly eachVA?: number;
}

/**
 * Demand in VA of recreational vehicle park sites: site loads by the largest receptacle of each, times the factor for the number of sites;
 * other park loads added whole. 551.73(A). An RV outlet at a house has no such factor: use this only where the authority lets the factor
 * stand for several sites there.
 */
export function rvParkDemand(given: { readonly id: string; readonly sites: readonly RvSites[]; readonly otherVA: number; readonly edition: Edition }): LoadSum {
  const { id, otherVA, edition } = given;
  const groups = given.sites.filter((group) => group.count > 0);
  const count = groups.reduce((sum, group) => sum + group.count, 0);
  const lines = groups.map((group, i) => {
    const cell = loadCell(RV_SITE_LOAD, group.site, "VA", edition);
    const each = group.eachVA ?? cell.value;
    return loadLine({
      id: `${id}.sites-${i + 1}`,
      label: group.site === "tent" ? "Tent sites" : `Sites, ${group.site} A`,
      value: decimal(each).times(group.count),
      expression: `${group.count} × ${print(each)} VA`,
      cells: group.eachVA === undefined ? [cell] : [],
      rules: group.eachVA === undefined ? [] : [RULE],
      edition,
    });
  });
  const connected = loadLine({
    id: `${id}.connected`,
    label: "Connected site load",
    value: lines.reduce((sum, line) => sum.plus(line.value), decimal(0)),
    expression: lines.map((line) => `${print(line.value)} VA`).join(" + ") || "0 VA",
    inputs: lines,
    edition,
  });
  const cell = count > 0 ? loadCell(RV_SITE_DEMAND, rowFrom(RV_SITE_DEMAND, count)!, "percent", edition) : null;
  const demand = loadLine({
    id: `${id}.demand`,
    label: `Demand of ${count} ${count === 1 ? "site" : "sites"}`,
    value: decimal(connected.value)
      .times(cell?.value ?? 0)
      .div(100),
    expression: `${print(connected.value)} VA × ${print(decimal(cell?.value ?? 0).div(100))}`,
    inputs: [connected],
    cells: cell ? [cell] : [],
    edition,
  });
  const total = loadLine({
    id: `${id}.total`,
    label: "Sites and other loads",
    value: decimal(demand.value).plus(otherVA),
    expression: `${print(demand.value)} VA + ${print(otherVA)} VA`,
    inputs: [demand],
    rules: [RULE],
    edition,
  });
  return { total, steps: [...lines, connected, demand, total] };
}

/** Least ampacity of a site feeder: the load, and never under 30 A. 551.73(D). */
export function leastRvFeederAmperes(given: { readonly id: string; readonly va: string; readonly volts: number; readonly edition: Edition }): Worked {
  const amperes = decimal(given.va).div(given.volts);
  return loadLine({
    id: given.id,
    label: "Least ampacity of the site feeder",
    value: amperes.gt(LEAST_FEEDER_AMPERES) ? amperes : decimal(LEAST_FEEDER_AMPERES),
    unit: "A",
    expression: `max(${LEAST_FEEDER_AMPERES} A; ${print(given.va)} VA / ${given.volts} V)`,
    rules: [FEEDER],
    edition: given.edition,
  });
}

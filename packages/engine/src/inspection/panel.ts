import type { Edition } from "../basis/edition.js";
import { electrodeConductor } from "../checks/electrode-conductor.js";
import { managedLoad } from "../checks/managed-load.js";
import { panelBus } from "../checks/panel-bus.js";
import type { DesignedJob } from "../designed.js";
import type { Panel } from "../job/schema.js";
import { runsOf } from "../job/tree.js";
import { print } from "../quantity.js";
import { printSize, type Size } from "../tables/size.js";
import { byRule, GOOD_WORK, type LineWords, PERMIT, section } from "./line.js";

/** What is looked at in each panel that new work leaves. */
export function panelLines(panel: Panel, edition: Edition): readonly LineWords[] {
  const at = (number: string) => section(number, edition);
  const runs = runsOf(panel);
  if (runs.length === 0) return [];
  const lines: LineWords[] = [
    {
      id: "directory",
      section: at("408.4(A)"),
      look: `${panel.name}: directory names the new work so that anybody finds it`,
      seen: runs.map((run) => `${run.breaker.spaces.join(" and ")}: ${run.name}`).join("; "),
      how: "read it beside the handles",
    },
    {
      id: "working-space",
      section: at("110.26(A)"),
      look: `${panel.name}: working space clear`,
      seen: "30 in wide, 36 in deep, 6 ft 6 in high",
      how: "tape from the front of the panel",
    },
    {
      id: "panel-rating",
      section: byRule(panelBus, edition),
      look: `${panel.name}: bus protected at its rating`,
      seen: `bus ${print(panel.bus)} A, ${panel.main === undefined ? "no main of its own" : `main ${print(panel.main)} A`}`,
      how: "read both",
    },
    {
      id: "panel-openings",
      section: at("110.12(A), 408.7"),
      look: `${panel.name}: unused openings closed, front back on`,
      seen: "no opening left in front or sides",
      how: "look round it",
    },
    {
      id: "neutral-terminals",
      section: at("408.41"),
      look: `${panel.name}: one neutral under each terminal`,
      seen: "each white conductor alone under its screw",
      how: "panel front off, by a qualified person",
    },
  ];
  const shared = panel.directory.some((one, i) => panel.directory.some((other, j) => i !== j && one.space === other.space));
  if (shared || runs.some((run) => run.breaker.poles === 1))
    lines.push({
      id: "tandem-places",
      section: at("408.54, 110.3(B)"),
      look: `${panel.name}: half-width breakers only where the panel's label allows them`,
      seen: shared ? "a space of this panel holds two breakers" : "full-width breaker, or a place the label names",
      how: "panel label and the breaker's place side by side",
    });
  return lines;
}

/** What ends the job. */
export function closingLines(job: DesignedJob): readonly LineWords[] {
  const { service } = job.job;
  const managed: LineWords[] =
    service.managed === undefined || job.service.managed === null
      ? []
      : [
          {
            id: "managed-setpoint",
            section: byRule(managedLoad, job.edition),
            look: "Energy management system as the load calculation counts on it",
            seen: `listed; set to ${print(service.managed.setpoint)} A; only qualified persons can change it`,
            how: "label, and the setpoint as it shows it",
          },
        ];
  const electrode: LineWords[] =
    service.electrode === undefined || job.serviceConductor?.electrode == null
      ? []
      : [
          {
            id: "service-electrode",
            section: byRule(electrodeConductor, job.edition),
            look: "Service: grounding electrode conductor",
            seen: `${printSize(job.serviceConductor.electrode.value as Size)} ${service.electrode.material} or larger, to ${service.electrode.electrodes.join(", ").replaceAll("-", " ")}`,
            how: "read its print, follow it to each electrode",
          },
        ];
  return [
    ...electrode,
    ...managed,
    {
      id: "test-record",
      section: GOOD_WORK,
      look: "Acceptance readings of every outlet in band, idle and loaded",
      seen: "the test record, filled and signed",
      how: "taken again before the inspector where asked",
    },
    {
      id: "on-site",
      section: PERMIT,
      look: "Permit card, approved sheets and house number there; work as drawn and ready",
      seen: job.job.project.site,
      how: "sheets on site in their last revision",
    },
    {
      id: "load-shown",
      section: job.service.without.citations.find((citation) => citation.edition !== null) ?? PERMIT,
      look: "Load calculation and voltage drop are among the sheets on site",
      seen: `${job.service.method}; margin ${print(job.service.margin.value)} A`,
      how: "the load sheet and the circuit calculations",
    },
  ];
}

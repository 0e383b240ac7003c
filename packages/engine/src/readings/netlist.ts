import { type Element, type Network, nodesOf } from "./network.js";

/**
 * The same network as an ngspice netlist (text) for a cross-check by another program: one AC point at the network's frequency.
 * With `probes`, only the volts of those nodes are printed, as `v(node) = re,im`. The reference node is 0.
 */
export function netlist(network: Network, title: string, probes: readonly string[] = nodesOf(network)): string {
  const node = (name: string): string => (name === network.reference ? "0" : netlistNode(name));
  const lines = network.elements.flatMap((element) => elementLines(element, network.hertz, node));
  return [
    `* ${title.replace(/\s+/g, " ")}`,
    ...lines,
    "* A node held by capacitance alone has no DC path; the shunt gives it one and is far above any meter.",
    ".options rshunt=1e12",
    ".control",
    "set numdgt=12",
    `ac lin 1 ${network.hertz} ${network.hertz}`,
    ...probes.map((probe) => `print v(${node(probe)})`),
    ".endc",
    ".end",
    "",
  ].join("\n");
}

/** The name a node takes in the netlist: letters, digits and underscores, in small letters as ngspice prints them. */
export function netlistNode(name: string): string {
  return `n_${name.toLowerCase().replace(/[^a-z0-9]/g, "_")}`;
}

function elementLines(element: Element, hertz: number, node: (name: string) => string): readonly string[] {
  const id = element.id.toLowerCase().replace(/[^a-z0-9]/g, "_");
  const from = node(element.from);
  const to = node(element.to);
  if (element.kind === "open") return [`* open: ${id} ${from} ${to}`];
  if (element.kind === "source") return [`V_${id} ${from} ${to} DC 0 AC ${element.volts} ${element.degrees}`];
  const { re, im } = element.ohms;
  const turning = 2 * Math.PI * hertz;
  const reactive = (a: string): string => (im > 0 ? `L_${id} ${a} ${to} ${im / turning}` : `C_${id} ${a} ${to} ${-1 / (turning * im)}`);
  if (im === 0) return [`R_${id} ${from} ${to} ${re}`];
  if (re === 0) return [reactive(from)];
  return [`R_${id} ${from} m_${id} ${re}`, reactive(`m_${id}`)];
}

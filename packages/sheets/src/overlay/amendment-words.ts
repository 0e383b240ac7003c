import type { Amendment } from "./amendment-schema.js";

const spaced = (id: string) => id.replaceAll("-", " ");

/** An amendment in words: what it is here, what it replaces, and where it stands. */
export function amendmentWords(a: Amendment): string {
  switch (a.target) {
    case "cover":
      return `Cover, ${spaced(a.row)}: ${a.value} in instead of ${a.replaces} in (${a.citation})`;
    case "check":
      return `Check ${a.check} off: ${a.reason} (${a.citation})`;
    case "verdict":
      return `Check ${a.check}: ${spaced(a.value)} instead of ${spaced(a.replaces)}: ${a.reason} (${a.citation})`;
    case "added-check":
      return `Also looked at: ${a.title}: ${a.reason} (${a.citation})`;
    case "parameter":
      return `${a.parameter === "drop-limit-percent" ? "Voltage drop of one run" : "Voltage drop from the service to the end"}: ${a.value} % instead of ${a.replaces} %: ${a.reason} (${a.citation})`;
    case "drop-force":
      return `Voltage drop limits ${a.value} instead of ${a.replaces}: ${a.reason} (${a.citation})`;
    default:
      return `GFCI not asked of a listed and labelled RV outlet: ${a.reason} (${a.citation})`;
  }
}

import type { Edition, PerEdition } from "./edition.js";

/**
 * How well a figure or rule is known.
 * published: two or more published sources agree. one-source: one published source.
 * memory: written from memory, to be verified against the adopted text. practice: common practice, no source.
 */
export type Standing = "published" | "one-source" | "memory" | "practice";

export interface Citation {
  readonly document: string;
  readonly section: string;
  readonly edition: Edition | null;
  readonly standing: Standing;
}

export interface Rule {
  readonly sections: PerEdition<string | null>;
  readonly standing: Standing;
}

/** The citation of a rule in one edition; null where that edition has no such rule. */
export function cite(rule: Rule, edition: Edition): Citation | null {
  const section = rule.sections[edition];
  return section === null ? null : { document: "NFPA 70", section, edition, standing: rule.standing };
}

/** A citation to something that is not the electrical code (a standard, a formula, common practice). */
export function citeOther(document: string, section: string, standing: Standing): Citation {
  return { document, section, edition: null, standing };
}

const STANDING_NOTE: Record<Standing, string> = {
  published: "",
  "one-source": " (one source)",
  memory: " (from memory: verify)",
  practice: " (common practice, no source)",
};

/** `NFPA 70-2023 250.122(B)`, with the standing spelled out unless it is published twice. */
export function printCitation(citation: Citation): string {
  const edition = citation.edition === null ? "" : `-${citation.edition}`;
  return `${citation.document}${edition} ${citation.section}${STANDING_NOTE[citation.standing]}`.trim();
}

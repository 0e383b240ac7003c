import type { Citation, Standing } from "../basis/citation.js";
import { type Edition, everyEdition, type PerEdition } from "../basis/edition.js";

/** A rule whose standing differs by edition; a section of null says the edition has no such rule. */
export interface KnownRule {
  readonly sections: PerEdition<string | null>;
  readonly standing: PerEdition<Standing>;
}

/** A rule known as given through 2023 and carried to 2026 from memory, that text not having been seen. */
export function unseen2026(section: string | PerEdition<string | null>, standing: Standing): KnownRule {
  return {
    sections: typeof section === "string" ? everyEdition(section) : section,
    standing: { ...everyEdition(standing), "2026": "memory" },
  };
}

/** A rule known equally well in all four editions. */
export function knownAlike(section: string | PerEdition<string | null>, standing: Standing): KnownRule {
  return { sections: typeof section === "string" ? everyEdition(section) : section, standing: everyEdition(standing) };
}

/** The citation of a rule that the edition has; asking for one it lacks is a bug. */
export function citeKnown(rule: KnownRule, edition: Edition): Citation {
  const section = rule.sections[edition];
  if (section === null) throw new RangeError(`no such rule in ${edition}`);
  return { document: "NFPA 70", section, edition, standing: rule.standing[edition] };
}

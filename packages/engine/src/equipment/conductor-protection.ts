import type { Edition } from "../basis/edition.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import type { Applies } from "./statement.js";

const SMALL = unseen2026("240.4(D)", "published");
const NEXT_UP = unseen2026("240.4(B)", "published");
const SPECIFIC = unseen2026("240.4(G)", "published");

interface Protection {
  readonly smallConductorCap: Applies;
  readonly nextSizeUp: Applies;
}

/** An individual circuit under the general rules: 14, 12 and 10 AWG keep their caps, the next standard size up may be used. */
export function ordinaryProtection(edition: Edition): Protection {
  return {
    smallConductorCap: { applies: true, says: "14, 12 and 10 AWG copper keep their 15, 20 and 30 A limits", citation: citeKnown(SMALL, edition) },
    nextSizeUp: {
      applies: true,
      says: "where the conductor's ampacity is no standard rating, the next one up may protect it; the load may still not exceed the ampacity",
      citation: citeKnown(NEXT_UP, edition),
    },
  };
}

/** A circuit for more than one receptacle for portable loads: the device may not exceed the conductor's ampacity. */
export function severalReceptaclesProtection(edition: Edition): Protection {
  return {
    ...ordinaryProtection(edition),
    nextSizeUp: { applies: false, says: "more than one receptacle for portable loads: no next size up", citation: citeKnown(NEXT_UP, edition) },
  };
}

/** Motors, air conditioners and welders, whose own article sets the protection of their conductors. */
export function ownArticleProtection(article: "430" | "440" | "630", edition: Edition): Protection {
  const citation = citeKnown(SPECIFIC, edition);
  return {
    smallConductorCap: { applies: false, says: `Article ${article} protects these conductors: the small-conductor limits do not bind`, citation },
    nextSizeUp: { applies: false, says: `Article ${article} has its own rounding, in place of the general next size up`, citation },
  };
}

import type { Segment } from "../job/schema.js";
import { EARTH_MOVEMENT, groundUnder } from "../sizing/riser.js";
import { isCable } from "../tables/cable.js";
import { isFlexible } from "../tables/raceway-kind.js";
import type { Check, Outcome } from "./finding.js";
import { eachSegment, fail, needsPerson, pass } from "./outcome.js";

const FITTING = "an expansion fitting in the riser, free to slide both ways, or a flexible connection to its box";
const LOOP = "an S loop of slack cable in the trench where it turns up";

/** What the method of a riser itself allows to give. */
function ways({ method }: Segment, loops: boolean): string {
  if (isFlexible(method)) return `slack in the ${method}, not drawn tight from the ground to its box`;
  if (isCable(method)) return LOOP;
  return loops ? `${LOOP}, or ${FITTING}` : FITTING;
}

function judged(segment: Segment, subject: string, loops: boolean): Outcome {
  const { method, earth_movement: told } = segment;
  const give = ways(segment, loops);
  switch (told) {
    case undefined:
      return needsPerson(subject, "what gives when the ground settles or heaves is not told", `see ${give}`);
    case "nothing":
      return fail(
        subject,
        `nothing gives when the ground settles or heaves under this ${method}: it can pull a box off the wall or a conductor out of its terminal`,
        `give it ${give}`,
      );
    case "ground-still":
      return needsPerson(subject, "the ground is told to stay still here", `ask the authority whether it takes the ground so; otherwise give it ${give}`);
    case "flexible-connection":
      return pass(subject, "a flexible connection takes up the movement, as entered");
    case "expansion-fitting":
      return isCable(method) || isFlexible(method)
        ? needsPerson(subject, `an expansion fitting is told and ${method} takes none (common practice, no source)`, `see ${give}`)
        : pass(subject, "an expansion fitting takes up the movement, as entered");
    case "slack-loop":
      return loops
        ? pass(subject, "a slack loop in the trench takes up the movement, as entered")
        : needsPerson(subject, "a slack loop is told, and the raceway in the ground goes up unbroken: the loop spares the conductors alone", `see ${give}`);
  }
}

export const earthMovement: Check = {
  id: "earth-movement",
  title: "What comes out of the ground gives when the ground moves",
  rule: EARTH_MOVEMENT,
  run: eachSegment((here, run, subject) => {
    const ground = groundUnder(run, run.segments.indexOf(here));
    return ground.length === 0
      ? null
      : judged(
          here.segment,
          subject,
          ground.every(({ method }) => isCable(method)),
        );
  }),
};

import { everyEdition } from "../basis/edition.js";
import type { DesignedRun } from "../designed.js";
import { decimal, print } from "../quantity.js";
import type { Check, Outcome } from "./finding.js";
import { fail, foundOnRuns, needsPerson, pass } from "./outcome.js";

export const pullBoxSize: Check = {
  id: "pull-box-size",
  title: "A box with 4 AWG or larger has its dimensions",
  rule: { sections: everyEdition("314.28(A)"), standing: "published" },
  run: foundOnRuns(
    ({ run, boxes }) => boxes.filter((b) => b.dimensions !== null).map((b) => judge(`${run.name}: ${b.box.name}`, b)),
    "no box with conductors of 4 AWG or larger",
  ),
};

function judge(subject: string, { box, dimensions, nextBetter }: DesignedRun["boxes"][number]): Outcome {
  const distance = (dimensions?.distances ?? []).map((d) => decimal(d.value)).sort((a, b) => b.cmp(a))[0] ?? null;
  const sides = [
    { name: "left to right", least: dimensions?.width?.value, has: box.width },
    { name: "top to bottom", least: dimensions?.height?.value, has: box.height },
    { name: "back to cover", least: dimensions?.depth?.value, has: box.depth },
    { name: "between the two entries of the pull", least: distance?.toFixed(), has: box.entry_distance },
  ].flatMap(({ name, least, has }) => (least === undefined ? [] : [{ name, least, has }]));
  const short = sides.filter(({ least, has }) => has !== undefined && decimal(has).lt(least));
  const least = sides.map((side) => `${print(side.least)} in ${side.name}`).join(", ");
  if (box.kind === "conduit-body")
    return needsPerson(
      subject,
      `a conduit body with conductors of 4 AWG or larger; a box would be ${least}`,
      "read its marking: the number and largest size of conductors it is listed for, 314.28(A)(3)",
    );
  if (short.length > 0)
    return fail(
      subject,
      short.map((side) => `${print(side.has!)} in ${side.name}, ${print(side.least)} in needed`).join("; "),
      `a larger box, next better ${nextBetter}, or raceways entering so that the pull is straight`,
    );
  const taken = dimensions?.assumed ? " (an angle pull taken: entries are not given)" : "";
  const unknown = sides.filter((side) => side.has === undefined);
  return unknown.length > 0
    ? needsPerson(
        subject,
        `sized by its dimensions${taken}: at least ${least}`,
        `measure inside: ${unknown.map((side) => `${print(side.least)} in ${side.name}`).join(", ")}`,
      )
    : pass(subject, `at least ${least}${taken}`);
}

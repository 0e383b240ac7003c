import { evaluate } from "mathjs";
import type { Worked } from "../src/worked.js";

/** A printed expression made readable for an independent evaluator. */
export const redo = (expression: string): number =>
  Number(
    evaluate(
      expression
        .split(" = ")[0]!
        .replace(/(\d),(?=\d{3})/g, "$1")
        .replaceAll("×", "*")
        .replaceAll("−", "-")
        .replaceAll("√", "sqrt")
        .replace(/Ω \/ 1000 ft/g, "/ 1000")
        .replace(/Ω/g, "")
        .replace(/\b(ft|kA|VA|A|V|cmil)\b/g, ""),
    ),
  );

/** An expression as printed, made readable for an independent evaluator: units, commas and signs of the page taken off. */
function plain({ expression, unit }: Worked): string {
  return expression
    .split(" = ")[0]!
    .replace(/ \([^()]*[a-z][^()]*\)/gi, (note) => (/^ \([-\d.,]* ?[A-Za-z²³Ω0-9]* ?[×/+−-]/.test(note) || /max\(|min\(|√/.test(note) ? note : ""))
    .replace(/(\d),(?=\d{3})/g, "$1")
    .replace(/^least of (.*)$/, "min($1)")
    .replace(/^(.*), rounded up, and one$/, "ceil($1) + 1")
    .replace(/^(.*), rounded up$/, "ceil($1)")
    .replaceAll(";", ",")
    .replaceAll("×", "*")
    .replaceAll("−", "-")
    .replaceAll("√", "sqrt")
    .replace(/\b(ft|in)²/g, "$12")
    .replaceAll("²", "^2")
    .replaceAll("³", "3")
    .replace(/Ω \/ 1000 ft/g, "/ 1000")
    .replaceAll("Ω", "")
    .replace(/(\d) %/g, unit === "%" ? "$1" : "$1 / 100")
    .replace(/\b(VA\/ft2|lbf\/ft|lb\/ft|lbf|in2|in3|VA|kA|ft2|ft|cmil|in|A|V|W)\b/g, "")
    .replace(/of other circuits|as entered/g, "");
}

/** A line whose value is not what its expression comes to: a size, a choice from a table, a value rounded by a named rule. */
export const chosen = (step: Worked) => step.unit === "AWG/kcmil" || step.unit === "text" || step.rounding !== null;

/** What mathjs makes of a line; null where it cannot read it. */
export function again(step: Worked): number | null {
  try {
    const value = Number(evaluate(plain(step)));
    return Number.isFinite(value) ? value : null;
  } catch {
    return null;
  }
}

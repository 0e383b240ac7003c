import { evaluate } from "mathjs";

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

import { type Design, materialsList, type PriceBook, type PricedList, type PricedRow, priceMaterials, print, regrets } from "@branchwork/engine";
import { runsOf, tagsOf } from "../drawing/tags.js";
import { type Block, type Draft, paragraph, table, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";

/** What to weigh beforehand, what to buy, and what it may cost where prices are given. */
export function materialsSheet(design: Design, prices: PriceBook | null): Draft {
  const list = materialsList({ design });
  const priced = prices === null ? null : priceMaterials({ rows: list.rows, book: prices });
  return {
    title: SHEETS.materials,
    blocks: [
      ...regretBlocks(design),
      paragraph("Measure the way on site before buying: wire that runs short wastes the whole pull. What stands already is not on the list."),
      paragraph(
        `Taken for the quantities (* common practice, no source): ${list.assumptions.map(({ says }) => says.replace(" (common practice, no source)", " *")).join("; ")}.`,
      ),
      ...(priced === null
        ? [
            withWidths(
              table(
                "To buy",
                ["Quantity", "Item", "Sold as", "Note", "Got"],
                list.rows.map((row) => [quantityOf(row), row.item, row.sold, row.note, ""]),
              ),
              ...[12, 34, 14, 32, 8],
            ),
            paragraph("No price book was given, so no cost is told."),
          ]
        : pricedBlocks(priced)),
    ],
  };
}

const quantityOf = ({ quantity, unit }: Pick<PricedRow, "quantity" | "unit">): string =>
  `${print(quantity.value)} ${unit === "ft" ? "ft" : "pieces"}`.replace(/^1 pieces$/, "1 piece");

function pricedBlocks({ rows, total, currency, source, date, unpriced }: PricedList): readonly Block[] {
  const told = rows.map((row) => [
    quantityOf(row),
    [row.item, row.sold === "" ? "" : `(${row.sold})`, row.note === "" ? "" : `; ${row.note}`].filter(Boolean).join(" ").replace(" ; ", "; "),
    ...(row.cost === null ? ["no price", "no price", "no price"] : [row.cost.low, row.cost.likely, row.cost.high]),
    "",
  ]);
  const sum = ["", unpriced.length === 0 ? "Together" : "Together, without what has no price", total.low, total.likely, total.high, ""];
  return [
    withWidths(
      table(`To buy; cost in ${currency}`, ["Quantity", "Item", "At least", "Likely", "At most", "Got"], [...told, sum], (i) => i === told.length),
      ...[12, 46, 11, 11, 12, 8],
    ),
    paragraph(
      `Prices: ${source}, ${date}. Material alone: no labor, tools, taxes or fees.${unpriced.length === 0 ? "" : ` Without a price, and so not in the sum: ${unpriced.join("; ")}.`}`,
    ),
  ];
}

/** What people regret, told where it is by its tag in the schedules. */
function regretBlocks(design: Design): readonly Block[] {
  const found = regrets(design);
  if (found.length === 0) return [];
  const tags = new Map<string, string>(
    runsOf(design).flatMap((run) => {
      const own = tagsOf(design).get(run.run.id)!;
      return [
        ...own.conductors.map((tag, i) => [`${run.run.id}.${i + 1}`, tag] as const),
        ...own.boxes.map((tag, i) => [`${run.run.id}.box.${i + 1}`, tag] as const),
      ];
    }),
  );
  return [
    withWidths(
      table(
        "Weigh before buying (lawful as it is; common practice, no source)",
        ["Tag", "What is often regretted", "Better"],
        found.map(({ from, says, instead }) => [tags.get(from) ?? "—", `${says.charAt(0).toUpperCase()}${says.slice(1)}`, instead]),
      ),
      ...[8, 46, 46],
    ),
  ];
}

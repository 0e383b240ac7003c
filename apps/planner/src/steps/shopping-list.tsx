import { useState } from "preact/hooks";
import { textAt } from "../job/document.js";
import { download, fileName, readChosenFile } from "../paper/files.js";
import { planner } from "../planner.js";
import { ask } from "../work/client.js";
import type { ShownCost } from "../work/protocol.js";

/** What to buy, and what it costs by the reader's own price book. */
export function ShoppingList() {
  const { text, overlay, plain, issues } = planner();
  const [prices, setPrices] = useState<{ readonly name: string; readonly text: string } | null>(null);
  const [cost, setCost] = useState<{ readonly of: string; readonly cost: ShownCost } | null>(null);
  const [refused, setRefused] = useState("");
  const made = async (book: string | null) => {
    try {
      const answer = await ask({ ask: "materials", job: text, overlay: overlay?.text ?? null, prices: book });
      if (answer.ok) {
        setRefused("");
        setCost(answer.cost === null ? null : { of: text, cost: answer.cost });
        return answer.csv;
      }
      const issue = answer.issues[0];
      setRefused(
        issue === undefined ? "It could not be made." : `${issue.of === "prices" ? `Price book, line ${issue.line}: ` : ""}${issue.what}. ${issue.mend}.`,
      );
    } catch (error) {
      setRefused(`It could not be made: ${error instanceof Error ? error.message : String(error)}`);
    }
    return null;
  };
  const shown = cost !== null && cost.of === text ? cost.cost : null;
  return (
    <section aria-labelledby="shopping">
      <h3 id="shopping">What to buy</h3>
      <p class="hint">
        Wire, raceway, boxes and fittings, counted from the route with slack and waste. Prices come from a price book of your own; none are built in.
      </p>
      <ul class="chips">
        <li>
          <button
            type="button"
            disabled={issues.length > 0}
            onClick={async () => {
              const csv = await made(prices?.text ?? null);
              if (csv !== null) download(`${fileName(textAt(plain, ["project", "title"]))}-materials.csv`, csv, "text/csv");
            }}
          >
            Shopping list (CSV)
          </button>
        </li>
        <li>
          <label class="button">
            Open a price book
            <input
              type="file"
              accept=".yaml,.yml"
              class="unseen"
              onChange={async (event) => {
                const read = await readChosenFile(event.currentTarget);
                if (read === null) return;
                if ("refused" in read) return setRefused(read.refused);
                setPrices(read);
                await made(read.text);
              }}
            />
          </label>
        </li>
      </ul>
      {shown && (
        <p role="status">
          <b>
            {shown.low} to {shown.high} {shown.currency}, likely {shown.likely}
          </b>{" "}
          by {prices?.name}, of {shown.date} ({shown.source}).
          {shown.unpriced.length > 0 && ` Not in it, so not counted: ${shown.unpriced.join(", ")}.`}
        </p>
      )}
      {refused && (
        <p class="wrong" role="alert">
          {refused}
        </p>
      )}
    </section>
  );
}

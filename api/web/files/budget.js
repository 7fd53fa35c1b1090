// The money asked for, in cash and in kind.
import { h } from "./dom.js";
import { money } from "./format.js";
import { list } from "./lenient.js";
import { table } from "./table.js";
import { without } from "./unpriced.js";
import { sentence } from "./words.js";

/** budget shows it by heading. Headings add up to the total. */
export function budget(estimate) {
  const { budget: sums, currency } = estimate;
  if (list(sums.categories).length === 0) return null;
  const heads = [{ text: "Heading" }, { text: "Cash", unit: currency, number: true }, { text: "In kind", unit: currency, number: true }, { text: "Total", unit: currency, number: true }];
  const rows = list(sums.categories).map((line) => [sentence(line.category), money(line.cash), money(line.in_kind), money(line.total)]);
  return h("section", { "aria-labelledby": "budget-head" },
    h("h3", { id: "budget-head" }, "Budget"),
    table("Built from what is bought, so that what is asked for is what will be paid", heads, rows,
      [["All", without(estimate)].filter(Boolean).join(", "), money(sums.cash_needed), money(sums.in_kind), money(sums.total)]));
}

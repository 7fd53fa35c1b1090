// The money asked for, in cash and in kind.
import { bar } from "./bars.js";
import { h } from "./dom.js";
import { money } from "./format.js";
import { list } from "./lenient.js";
import { table } from "./table.js";
import { without } from "./unpriced.js";
import { sentence } from "./words.js";
import { working } from "./working.js";

/** budget shows it by heading. Headings add up to the total. */
export function budget(estimate, system) {
  const { budget: sums, currency } = estimate;
  const lines = list(sums.categories);
  if (lines.length === 0) return null;
  const most = Math.max(...lines.map((line) => Number(line.total)));
  const heads = [{ text: "Heading" }, { text: "" }, { text: "Cash", unit: currency, number: true }, { text: "In kind", unit: currency, number: true }, { text: "Total", unit: currency, number: true }];
  const rows = lines.map((line) => [sentence(line.category), bar(Number(line.cash), Number(line.in_kind), most), money(line.cash), money(line.in_kind), money(line.total)]);
  return h("section", { "aria-labelledby": "budget-head" },
    h("h3", { id: "budget-head" }, "Budget"),
    h("p", { class: "key", "aria-hidden": "true" }, bar(1, 0, 1), " cash", bar(0, 1, 1), " in kind"),
    table("Built from what is bought, so that what is asked for is what will be paid", heads, rows,
      [["All", without(estimate)].filter(Boolean).join(", "), "", money(sums.cash_needed), money(sums.in_kind), money(sums.total)]),
    budgetLines(list(sums.lines), currency),
    working(list(sums.working), system, "Show the working of the budget"));
}

function budgetLines(lines, currency) {
  if (lines.length === 0) return null;
  const heads = [{ text: "Line" }, { text: "Heading" }, { text: "Paid" }, { text: "Amount", unit: currency, number: true }];
  return h("details", { class: "working" }, h("summary", {}, `Every line of it (${lines.length})`),
    table("What the headings are made of", heads, lines.map((line) => [line.text, sentence(line.category), line.funding === "cash" ? "cash" : "in kind", money(line.amount)])));
}

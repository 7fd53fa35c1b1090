// How sure the estimate is: the range of its totals, what makes them uncertain,
// its class and what would raise it.
import { fill, h } from "./dom.js";
import { figure, money } from "./format.js";
import { rangeChart } from "./range-chart.js";
import { table } from "./table.js";
import { capital } from "./words.js";

const percentiles = ["p10", "p50", "p80", "p90"];
const percent = (ratio, digits = 2) => `${figure(100 * ratio, digits)} %`;

/** rangeResults shows the range of an estimate; nothing where it has none. */
export function rangeResults(place, estimate) {
  const { range, currency } = estimate;
  fill(place, range ? [figures(range, currency), h("figure", {}, rangeChart(range, currency), h("figcaption", { class: "hint" },
    "Bars: how often a total came up. Line: how often a total was enough. Tick below: the single figure of the estimate.")), drivers(range), inputs(range)] : null, classOf(estimate.class));
}

function figures(range, currency) {
  const heads = [{ text: "What" }, ...percentiles.map((name) => ({ text: name.toUpperCase(), number: true })), { text: "Mean", number: true }];
  const line = (name, spread, write) => [name, ...[...percentiles, "mean"].map((key) => write(spread[key]))];
  const hours = (value) => figure(value, 3);
  return [
    h("p", {}, h("strong", { "data-figure": "P80" }, `${currency} ${money(range.total.p80)}`), ` is enough in 80 of 100 trials; the estimate’s single figure, ${money(range.single_figure)}, in ${figure(100 * range.single_holds_ratio, 2)} of 100.`),
    table(`Each figure is not passed in 10, 50, 80 or 90 of 100 trials; ${figure(range.trials, 7)} trials`, heads, [
      line(`Total, ${currency}`, range.total, money), line(`Cash needed, ${currency}`, range.cash_needed, money), line("Work, h", range.hours, hours)]),
  ];
}

function drivers({ drivers: all }) {
  if (all.length === 0) return null;
  const heads = [{ text: "What makes the total uncertain" }, { text: "Share", number: true }, { text: "" }];
  const greatest = Math.max(...all.map((driver) => driver.share_ratio));
  return table("Measure or ask about the first of these first", heads, all.map((driver) => [capital(driver.name), percent(driver.share_ratio), share(driver.share_ratio / greatest)]));
}

function share(ratio) {
  return h("meter", { class: "share", min: 0, max: 1, value: ratio, "aria-hidden": "true" });
}

function inputs({ inputs: all, method }) {
  const heads = [{ text: "Input" }, { text: "Low", number: true }, { text: "Likely", number: true }, { text: "High", number: true }, { text: "Why" }];
  return h("details", { class: "working" }, h("summary", {}, `What was varied (${all.length})`),
    table("Every number that was drawn, SI", heads, all.map((one) => [capital(one.name) + (one.unit ? `, ${one.unit}` : ""), figure(one.low), figure(one.likely), figure(one.high), one.source])),
    h("ul", {}, method.map((text) => h("li", { class: "hint" }, text))));
}

/** classOf shows how far the job is known, and what would make the estimate firmer. */
function classOf(found) {
  if (!found) return null;
  const signed = (pair) => pair.map((value) => `${value > 0 ? "+" : "−"}${Math.abs(value)}`).join(" to ");
  return h("section", { class: "class", "aria-labelledby": "class-head" },
    h("h4", { id: "class-head" }, `Class ${found.class} estimate: ${found.name}`),
    h("p", {}, `Usual accuracy ${signed(found.low_percent)} % on the low side, ${signed(found.high_percent)} % on the high side.`),
    h("ul", {}, found.why.map((text) => h("li", { class: "hint" }, capital(text)))),
    found.up.length > 0 ? [h("h4", {}, "What would make it firmer"), h("ul", { class: "up" }, found.up.map((text) => h("li", {}, capital(text))))] : null,
    h("cite", {}, found.source));
}

// The four numbers that people came for.
import { h } from "./dom.js";
import { cup, figure, measure, money } from "./format.js";
import { converted } from "./units.js";
import { without } from "./unpriced.js";

function parts(estimate, system) {
  const { totals, budget, currency } = estimate;
  const [area, areaUnit] = converted(totals.area_m2, "m²", system);
  const [litres, litresUnit] = cup(totals.litres, system).split(/ (.*)/);
  return [
    { what: "Area", value: figure(area, 4), unit: areaUnit, from: "#parts-result-head" },
    { what: "Liquids", value: litres, unit: litresUnit, from: "#steps-result-head" },
    { what: "Work", value: figure(totals.hours), unit: "h", from: "#steps-result-head" },
    { what: "Total", value: money(budget.total), unit: currency, note: without(estimate), total: true, from: "#budget-head" },
  ];
}

/** headline shows area, liquids, work and total as the title block of the estimate. */
export function headline(estimate, system) {
  const { budget, currency } = estimate;
  const cells = parts(estimate, system).map(({ what, value, unit, note, total, from }) =>
    h("div", { class: total ? "total" : null }, h("dt", {}, h("a", { href: from, title: "Where this comes from" }, what)),
      h("dd", { "data-figure": what }, value, " ", h("span", { class: "unit" }, unit)), note ? h("dd", { class: "lacks" }, note) : null));
  return [
    h("dl", { class: "block" }, cells),
    h("p", { class: "split" }, `${currency} ${money(budget.cash_needed)} in cash, ${currency} ${money(budget.in_kind)} in kind${without(estimate) ? ", " + without(estimate) : ""}. `, h("a", { href: "#range" }, "How sure is this?")),
  ];
}

/** glance says total and area in few words. */
export function glance(estimate, system) {
  const lacking = without(estimate);
  return [`${estimate.currency} ${money(estimate.budget.total)}`, lacking, measure(estimate.totals.area_m2, "m²", system)].filter(Boolean).join(" · ");
}

/** spoken says the headline in one sentence, for those who hear the page. */
export function spoken(estimate, system) {
  return parts(estimate, system).map(({ what, value, unit, note }) => [what, value, unit, note].filter(Boolean).join(" ")).join(", ") + ".";
}

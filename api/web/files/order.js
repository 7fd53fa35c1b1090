// What to buy, in whole packs.
import { buyers } from "./buyers.js";
import { h } from "./dom.js";
import { amount, figure, money } from "./format.js";
import { list } from "./lenient.js";
import { price, unpriced, without } from "./unpriced.js";
import { working } from "./working.js";

/** order shows each product with its packs, and what is left over. */
export function order(estimate, system) {
  const { currency, budget } = estimate;
  if (estimate.order.length === 0) return null;
  const unknown = unpriced(estimate);
  const lacking = without(estimate);
  return h("section", { id: "buy", tabindex: "-1", "aria-labelledby": "buy-head" },
    h("h3", { id: "buy-head" }, "What to buy"),
    h("ul", { class: "buy" }, estimate.order.map((line) => h("li", { "data-product": line.product },
      h("div", { class: "packs" }, line.packs.map((pack) => h("div", {}, packs(pack, line.unit, system)))),
      h("div", { class: "what" }, h("strong", {}, line.name), line.supplier ? `, ${line.supplier}` : "",
        h("p", { class: "hint" }, `${amount(line.needed, line.unit, system)} needed, ${amount(line.left_over, line.unit, system)} left over`)),
      h("div", { class: "cost" }, price(line.cost, line.priced !== false && !unknown.has(line.product))),
      working(list(line.working), system)))),
    h("p", { class: "sum" }, h("span", {}, lacking ? `All of it, ${lacking}` : "All of it"), h("span", {}, `${currency} ${money(budget.materials_ordered)}`)),
    h("p", { class: "hint" }, `Whole packs are paid for; ${currency} ${money(budget.materials_consumed)} of it is used up.`),
    buyers(estimate, system));
}

function packs(pack, unit, system) {
  const size = unit === "pcs" ? `pack of ${figure(pack.pack)}` : amount(pack.pack, unit, system, system === "us" ? 3 : 4);
  return [h("b", {}, pack.count), ` × ${size}`];
}

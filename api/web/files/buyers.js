// One list to buy from for each supplier, as it is taken along.
import { h } from "./dom.js";
import { amount, figure, money } from "./format.js";
import { list } from "./lenient.js";
import { table } from "./table.js";
import { plural } from "./words.js";

const extras = [["freight", "Carriage"], ["hazardous_freight", "Carriage of dangerous goods"], ["small_order_charge", "Charge for a small order"]];

/** buyers shows them, closed. */
export function buyers(estimate, system) {
  const orders = list(estimate.order_by_supplier);
  if (orders.length === 0) return null;
  return h("details", { class: "working" }, h("summary", {}, orders.length === 1 ? "List for the buyer" : `Lists for the buyer, ${plural(orders.length, "supplier")}`),
    orders.map((one) => order(one, estimate.currency, system)));
}

function order(one, currency, system) {
  const heads = [{ text: "What" }, { text: "Packs", number: true }, { text: "Of", number: true }, { text: "Each", unit: currency, number: true }, { text: "Cost", unit: currency, number: true }];
  const rows = list(one.lines).map((line) => [
    [line.name, line.part ? `, ${line.part}` : "", line.hazardous ? h("span", { class: "hint" }, " dangerous goods") : null],
    line.count, line.unit === "pcs" ? `${figure(line.pack)} pcs` : amount(line.pack, line.unit, system, 4), line.price ? money(line.price) : "no price", line.price ? money(line.cost) : "–"]);
  for (const [key, text] of extras) if (Number(one[key]) > 0) rows.push([text, "", "", "", money(one[key])]);
  return table(one.supplier || "No supplier named", heads, rows, ["All", "", "", "", money(one.total)]);
}

// Products without a known price: their cost is in no sum.
import { money } from "./format.js";
import { plural } from "./words.js";

/** unpriced is the set of them, by id. */
export function unpriced(estimate) {
  return new Set(estimate.budget.unpriced ?? []);
}

/** without says what a sum leaves out: "without 2 products that have no price", or "". */
export function without(estimate) {
  const { size } = unpriced(estimate);
  return size === 0 ? "" : `without ${plural(size, "product")} that ${size === 1 ? "has" : "have"} no price`;
}

/** price writes an amount, or that there is none. */
export function price(amount, known) {
  return known ? money(amount) : "no price";
}

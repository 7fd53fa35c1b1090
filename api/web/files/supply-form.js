// Who sells what is bought, and what is there already.
import { more } from "./card.js";
import { list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { rows } from "./rows.js";
import { everyProduct } from "./step-fields.js";

/** supplyForm shows suppliers and stock behind a line. */
export function supplyForm(c) {
  const products = everyProduct(c).map((entry) => entry.id);
  const suppliers = [{ key: "id", label: "Short name", text: true }, { key: "name", label: "Name", text: true }, { key: "freight", label: "Carriage", text: true },
    { key: "freight_free_from", label: "Free from", text: true }, { key: "minimum_order", label: "Least order", text: true }, { key: "lead_time_days", label: "Lead time, working days" }];
  const stock = [{ key: "product", label: "Product", values: products }, { key: "quantity", label: "How much, in its unit" }, { key: "value", label: "Worth, for a gift", text: true }];
  return more(c, "supply", "Suppliers, and what is in stock", [
    rows(c, "/suppliers", suppliers, { title: "Suppliers", one: "supplier", hint: "a product names its supplier by the short name", fresh: (held) => ({ id: freeId(held, "supplier"), name: "", freight: "0.00" }) }),
    rows(c, "/stock", stock, { title: "In stock", one: "stock", hint: "comes off the order first", fresh: () => ({ product: firstUsed(c) ?? products[0], quantity: 1 }) })]);
}

/** firstUsed is the first product of which a step speaks. */
function firstUsed(c) {
  return list(c.job.document.steps).map((step) => step.product ?? step.media).find(Boolean);
}

/** labourFields are the fields about how a crew works. */
export const labourFields = [
  ["availability_percent", "Share of the time that is worked", "100"], ["efficiency_percent", "What this crew does to the rates", "100"],
  ["session_h", "Length of a session", "not said"], ["session_setup_h", "To open up, each session", "0"], ["session_cleanup_h", "To clear away, each session", "0"],
  ["batch_h", "To mix a batch and clean the gun", "0"], ["fringe_percent", "On wages: social insurance and the like", "0"],
];

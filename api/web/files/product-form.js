// Products of the job's own: those of the catalogue with the data sheet and the
// price in hand, or others like them.
import { act, card } from "./card.js";
import { freshId, h } from "./dom.js";
import { numberField, textField } from "./field.js";
import { isRange, list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { below } from "./pointer.js";
import { rows } from "./rows.js";
import { label, sentence } from "./words.js";

const sizes = { paint: "pack_l", thinner: "pack_l", liquid: "pack_l", media: "pack_kg", tape: "pack_m", film: "pack_m", disc: "pack_count", item: "pack_count" };

/** productForm shows them, and the list of what can be changed. */
export function productForm(c) {
  const own = list(c.job.document.products);
  const held = new Set(own.map((entry) => entry.id));
  const others = c.catalogue.products.filter((entry) => !held.has(entry.id));
  const id = freshId("product");
  const select = h("select", { id }, others.map((entry) => h("option", { value: entry.id }, `${sentence(entry.kind)}: ${entry.name || entry.id}`)));
  const add = (like) => addProduct(c, others.find((entry) => entry.id === select.value), like);
  return h("section", { "aria-labelledby": "products-head" },
    h("h3", { id: "products-head" }, "Products and prices"),
    h("p", { class: "hint" }, "Prices of the catalogue are invented. Take a product into the job to give it your own price, packs and data sheet."),
    own.map((entry, i) => productCard(c, entry, i)),
    h("div", { class: "add" }, h("label", { for: id }, "A product of the catalogue"), select,
      h("button", { type: "button", "data-focus": "/products+", onclick: () => add(false) }, "Change it")),
    h("p", { class: "add-one" }, h("button", { type: "button", class: "small", onclick: () => add(true) }, "Add one of my own like it")));
}

function addProduct(c, found, like) {
  const copy = structuredClone(found);
  copy.packs = list(copy.packs).map(({ source, ...pack }) => pack);
  if (like) Object.assign(copy, { id: freeId([...list(c.job.document.products), ...c.catalogue.products], copy.id), name: (copy.name || copy.id) + ", my own" });
  c.opened.set("product " + copy.id, true);
  c.job.reshape((job) => { job.products = [...list(job.products), copy]; });
  c.focusOn(below("/products", c.job.document.products.length - 1));
}

function productCard(c, product, i) {
  const at = below("/products", i);
  const title = product.name || product.id || `product ${i + 1}`;
  const numbers = Object.entries(product).filter(([name, value]) => typeof value === "number" || isRange(value) || numeric.has(name));
  const size = sizes[product.kind] ?? "pack_count";
  const columns = [{ key: size, name: size, label: size === "pack_count" ? "Pieces in it" : "Pack" }, { key: "price", label: `Price, ${c.job.document.currency ?? ""}`, text: true }];
  return card(c, { at, key: "product " + product.id, title, note: sentence(product.kind ?? "product"), open: false },
    h("div", { class: "fields" }, textField(c, below(at, "name"), { label: "Name", wide: true }), numbers.map(([name]) => numberField(c, below(at, name), { name, label: label(name) })),
      textField(c, below(at, "supplier"), { label: "Supplier" }), textField(c, below(at, "source"), { label: "Where its values come from", wide: true }),
      rows(c, below(at, "packs"), columns, { title: "Packs and prices", one: "pack", fresh: (now) => ({ [size]: now.at(-1)?.[size] ?? 1, price: "0.00" }) })),
    h("div", { class: "acts" }, act(c, "Remove", `Remove ${title} from the job`, (job) => job.products.splice(i, 1), () => "/products+")));
}

/** Numbers that may stand as text with a unit. */
const numeric = new Set(["volume_solids_percent", "dry_film_density_kg_l", "density_kg_l", "voc_g_l", "thinner_percent", "pot_life_h", "dry_film_um", "coverage_l_m2",
  "bulk_density_kg_m3", "breakdown_percent", "width_mm", "width_m", "area_m2", "lead_time_days", "shelf_life_days"]);

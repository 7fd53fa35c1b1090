// Which numbers and choices each operation has: those everybody sets first,
// then those that override the book.
import { choices } from "./choices.js";
import { checkField, choiceField, numberField } from "./field.js";
import { list } from "./lenient.js";
import { below } from "./pointer.js";
import { sentence } from "./words.js";

const product = (label, kind, use) => ({ name: "product", label, kind, use });
const liquid = (label, use) => ({ main: [product(label, "liquid", use), number("coats", "Times", "1")], rest: [number("coverage_l_m2", "Liquid for one square metre", "from the product")] });
const number = (name, label, empty, hint) => ({ name, label, empty, hint });
const pick = (name, label, empty, hint) => ({ name, label, empty, hint, pick: true });
const check = (name, label, hint, otherwise) => ({ name, label, hint, check: true, otherwise });
const fromBook = "from the book";

const film = {
  main: [number("coats", "Coats", "1"), number("dry_film_um", undefined, "usual for this paint"), { name: "method", label: "How it is put on", method: true }],
  rest: [number("transfer_efficiency_percent", "Spray that lands", "from the method", "transfer efficiency"), number("loss_percent", undefined, "0", "left in pot, hose and cup"),
    number("thinner_percent", "Thinner", "from the product", "of the unthinned paint"), number("profile_um", "Blast profile to fill", "0", "under the first coat"),
    number("profile_fill_ratio", "Share of the profile filled", "0.5"), pick("film_rule", "The film is", "a mean", "mean, or a minimum with its rule"), number("film_cov_ratio", "Spread of the film", "0.2", "standard deviation over mean")],
};

const fields = {
  blast: {
    main: [{ name: "media", label: "Abrasive", kind: "media" }, number("nozzle_bore_mm", "Bore of the nozzle"), number("nozzles", "Nozzles at once", "1"), number("pressure_kpa", "Pressure at the nozzle"),
      number("strip_rate_m2_h", "Area one nozzle strips in an hour", fromBook), check("recovered", "Abrasive is collected and used again")],
    rest: [pick("feed", "Feed", "pressure"), number("working_charge_kg", "Abrasive that fills the machine", "0"), number("media_flow_kg_h", "Abrasive thrown by one nozzle", fromBook),
      number("breakdown_percent", "Lost in one pass", "from the product"), number("discharge_coefficient", "Discharge coefficient", "of the feed"), number("ambient_pressure_kpa", "Pressure of the air", "101.325")],
  },
  sand: {
    main: [product("Disc", "disc"), check("scuff", "Only roughen the paint; nothing comes off")],
    rest: [number("disc_area_m2", "Area one disc prepares", "from the product")],
  },
  strip: liquid("Stripper", "stripper"),
  wash: liquid("Cleaner", "cleaner"),
  protect: liquid("Protective", "protective"),
  pretreat: liquid("Treatment", "treatment"),
  mask: { main: [], rest: [number("rate_m_h", "Tape one person lays in an hour", fromBook)] },
  coat: { main: [product("Paint", "paint"), ...film.main], rest: film.rest },
  mark: { main: film.main, rest: [{ name: "family", label: "Paint family", families: true }, ...film.rest] },
};

const everyRest = [number("setup_h", undefined, "0", "once"), number("rate_m2_h", undefined, fromBook), number("crew", "People at once", "1"), pick("labour", "Whose hours", "volunteer")];
const maskedRest = [check("mask", "Mask the edges", "wherever there are edges", true), { name: "tape", label: "Tape", kind: "tape", empty: "usual" }, { name: "film", label: "Masking film or paper", kind: "film", empty: "usual" }];

/** stepFields returns [what everybody sets, the rest] for a step of an operation. */
export function stepFields(c, at, operation) {
  const own = fields[operation] ?? { main: [], rest: [] };
  const tape = operation === "mask" ? maskedRest.slice(1) : maskedRest;
  return [own.main.map((field) => show(c, at, field)), [...everyRest, ...own.rest, ...tape].map((field) => show(c, at, field))];
}

function show(c, stepAt, field) {
  const at = below(stepAt, field.name);
  if (field.kind) return choiceField(c, at, { ...field, wide: !field.empty, values: offered(c, field) });
  if (field.method) return choiceField(c, at, { ...field, wide: true, values: c.catalogue.methods.map((method) => ({ value: method.id, text: method.name })) });
  if (field.families) return choiceField(c, at, { ...field, empty: "polyurethane-gloss", values: families(c).map((value) => ({ value })) });
  if (field.pick) return choiceField(c, at, { ...field, values: choices(field.name).map((value) => ({ value, text: sentence(value) })) });
  return field.check ? checkField(c, at, field) : numberField(c, at, field);
}

/** everyProduct is the catalogue with the job's own products in it. */
export function everyProduct(c) {
  const own = list(c.job.document.products);
  const replaced = new Set(own.map((entry) => entry.id));
  return [...own, ...c.catalogue.products.filter((entry) => !replaced.has(entry.id))];
}

function offered(c, { kind, use }) {
  const own = new Set(list(c.job.document.products));
  return everyProduct(c).filter((entry) => entry.kind === kind && (!use || !entry.use || entry.use === use))
    .map((entry) => ({ value: entry.id, text: entry.name || entry.id, group: own.has(entry) ? "Of this job" : groupOf(entry) }));
}

function groupOf(entry) {
  const group = entry.role ?? entry.use;
  return group ? sentence(group) : undefined;
}

function families(c) {
  return [...new Set(everyProduct(c).map((entry) => entry.family).filter(Boolean))];
}

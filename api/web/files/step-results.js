// What each step takes: a table of all, then each with its materials, its
// warnings and its working.
import { h } from "./dom.js";
import { amount, decimalsFor, fixed, measure, money } from "./format.js";
import { converted } from "./units.js";
import { table } from "./table.js";
import { price, unpriced, without } from "./unpriced.js";
import { working } from "./working.js";
import { capital, plural, sentence, task } from "./words.js";

const columns = [
  ["area_m2", "Area", "m²"], ["litres", "Liquid", "L"], ["kilograms", "Abrasive", "kg"],
  ["masking_tape_m", "Tape", "m"], ["hours", "Work", "h"], ["waste_kg", "Waste", "kg"],
];

const costs = [{ key: "material_cost", text: "Material cost" }, { key: "labour_cost", text: "Labour cost" }, { key: "cost", text: "Cost" }];

/** stepResults shows the steps. */
export function stepResults(estimate, system) {
  const { steps, totals, currency } = estimate;
  if (steps.length === 0) return null;
  const shown = columns.filter(([key]) => steps.some((step) => step[key] !== 0)).map(([key, text, si]) => {
    const values = steps.map((step) => converted(step[key], si, system)[0]);
    const decimals = decimalsFor(values);
    const write = (value) => value === 0 ? "–" : fixed(converted(value, si, system)[0], decimals);
    return { key, text, unit: converted(0, si, system)[1], write, number: true };
  });
  const heads = [{ text: "Step" }, ...shown, ...costs.map(({ text }) => ({ text, unit: currency, number: true }))];
  const rows = steps.map((step) => [named(step), ...shown.map((column) => column.write(step[column.key])), ...costs.map(({ key }) => costOf(step, key, unpriced(estimate)))]);
  const foot = [["All", without(estimate)].filter(Boolean).join(", "), ...shown.map((column) => column.key === "area_m2" ? "" : column.write(totals[column.key])),
    ...costs.map(({ key }) => money(totals["steps_" + key]))];
  return h("section", { "aria-labelledby": "steps-result-head" },
    h("h3", { id: "steps-result-head" }, "Step by step"),
    table("What each step takes; material is what is used up, at pack price", heads, rows, foot),
    steps.map((step) => detail(step, currency, system, unpriced(estimate))));
}

/** costOf writes a cost of a step; what consists of unknown prices alone is no 0.00. */
function costOf(step, key, unknown) {
  const lacking = step.materials.some((material) => unknown.has(material.product));
  return price(step[key], !(lacking && key !== "labour_cost" && Number(step[key]) === 0));
}

function named(step) {
  return capital(step.name || `${step.id} (${task(step.operation).toLowerCase()})`);
}

function detail(step, currency, system, unknown) {
  const facts = [
    `${costOf(step, "material_cost", unknown)} of material and ${money(step.labour_cost)} of ${step.labour} work, ${currency}`,
    step.dry_film_kg > 0 ? `${measure(step.dry_film_kg, "kg", system)} of dry film put on` : "",
    step.removed_film_kg > 0 ? `${measure(step.removed_film_kg, "kg", system)} of old paint taken off` : "",
    step.voc_kg > 0 ? `${measure(step.voc_kg, "kg", system)} of solvent into the air` : "",
  ].filter(Boolean);
  return h("details", { class: "result", "data-step": step.id },
    h("summary", {}, h("span", { class: "title" }, named(step)), h("span", { class: "note" }, plural(step.working.length, "finding"))),
    h("div", { class: "inside" },
      step.warnings.length > 0 ? h("ul", { class: "warned" }, step.warnings.map((text) => h("li", {}, text))) : null,
      step.wear.length > 0 ? h("p", {}, h("strong", {}, "Wear: "), step.wear.join(", ") + ".") : null,
      h("p", {}, facts.join("; ") + "."),
      step.materials.length > 0 ? h("ul", { class: "materials" }, step.materials.map((material) =>
        h("li", {}, h("span", {}, material.name), h("span", { class: "value" }, amount(material.quantity, material.unit, system)), h("span", { class: "value" }, price(material.cost, !unknown.has(material.product)))))) : null,
      step.cautions.length > 0 ? h("p", { class: "hint" }, "Cautions: " + step.cautions.filter(({ code }) => code !== "defer").map(({ code }) => sentence(code).toLowerCase()).join(", ") + ".") : null,
      working(step.working, system)));
}

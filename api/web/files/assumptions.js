// What the job did not say, and what was taken instead.
import { h } from "./dom.js";
import { measure } from "./format.js";
import { capital } from "./words.js";

/** assumptions lists them with their sources. */
export function assumptions(estimate, system) {
  if (estimate.assumptions.length === 0) return null;
  return h("section", { class: "assumptions", "aria-labelledby": "assumptions-head" },
    h("h3", { id: "assumptions-head" }, "Assumed, because the job does not say"),
    h("ul", {}, estimate.assumptions.map(({ text, value, unit, source, steps }) => h("li", {},
      h("span", {}, capital(text), unit ? h("span", { class: "value" }, measure(value, unit, system)) : null),
      h("cite", {}, source, steps?.length ? ` · ${steps.join(", ")}` : "")))));
}

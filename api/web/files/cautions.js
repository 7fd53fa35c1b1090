// What can hurt somebody, where it cannot be overlooked: the names of all
// dangers at the head of the results, and every text in full below.
import { h } from "./dom.js";
import { sentence } from "./words.js";

/** warnings shows what should be looked at before the figures are used. */
export function warnings(estimate) {
  const all = [...estimate.warnings.map((text) => ["", text]), ...estimate.steps.flatMap((step) => step.warnings.map((text) => [step.name || step.id, text]))];
  if (all.length === 0) return null;
  return h("section", { class: "warnings", "aria-labelledby": "warnings-head" },
    h("h3", { id: "warnings-head" }, "Look at this first"),
    h("ul", {}, all.map(([step, text]) => h("li", {}, step ? h("strong", {}, step + ": ") : null, text))));
}

/** dangers names every danger in a line or two, with the way to the texts. */
export function dangers(estimate) {
  const named = estimate.cautions.filter((caution) => caution.code !== "defer");
  if (named.length === 0) return null;
  return h("aside", { class: "dangers", "aria-label": "Dangers" },
    h("p", {}, h("strong", {}, "Take care: "), named.map(({ code }) => sentence(code).toLowerCase()).join(", "), ". ",
      h("a", { href: "#cautions" }, "Read all of it before you start.")));
}

/** cautions shows every caution in full. */
export function cautions(estimate) {
  if (estimate.cautions.length === 0) return null;
  return h("section", { class: "cautions", id: "cautions", tabindex: "-1", "aria-labelledby": "cautions-head" },
    h("h3", { id: "cautions-head" }, "Before you start, and while you work"),
    h("dl", {}, estimate.cautions.map(({ code, text, source }) =>
      h("div", {}, h("dt", {}, code === "defer" ? "Remember" : sentence(code)), h("dd", {}, text, " ", h("cite", {}, source))))));
}

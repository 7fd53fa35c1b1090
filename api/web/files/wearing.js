// What to put on for each step.
import { h } from "./dom.js";
import { capital } from "./words.js";

/** wearing shows it for every step that asks for something. */
export function wearing(estimate) {
  const dressed = estimate.steps.filter((step) => step.wear.length > 0);
  if (dressed.length === 0) return null;
  return h("section", { class: "wear", "aria-labelledby": "wear-head" },
    h("h3", { id: "wear-head" }, "What to wear"),
    h("dl", {}, dressed.map((step) => h("div", { "data-wear": step.id },
      h("dt", {}, capital(step.name || step.id)), h("dd", {}, capital(step.wear.join(", ")) + ".")))),
    h("p", { class: "hint" }, "The cautions below say why. Where the safety data sheet of your product or a local rule asks for more, wear that too."));
}

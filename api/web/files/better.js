// Tests to make between two steps, and what would make the estimate better.
import { h } from "./dom.js";
import { capital } from "./words.js";

/** tests shows what to test at the end of each step that asks for it. */
export function tests(estimate) {
  const testing = estimate.steps.filter((step) => step.checks.length > 0);
  if (testing.length === 0) return null;
  return h("section", { class: "wear", "aria-labelledby": "tests-head" },
    h("h3", { id: "tests-head" }, "Test before the next step"),
    h("dl", {}, testing.map((step) => h("div", {},
      h("dt", {}, capital(step.name || step.id)),
      h("dd", {}, step.checks.map(({ on, text }) => h("p", {}, `${on.join(", ")}: ${text}.`)))))));
}

/** better lists what is still untried and moves the cost most. */
export function better(estimate) {
  if (estimate.improve.length === 0) return null;
  return h("section", { class: "better", "aria-labelledby": "better-head" },
    h("h3", { id: "better-head" }, "What would make this estimate better?"),
    h("ol", {}, estimate.improve.map(({ text, source }) => h("li", {}, capital(text), ". ", h("cite", {}, source)))));
}

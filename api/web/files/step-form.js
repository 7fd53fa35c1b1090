// The steps in their order: what is done to the parts.
import { act, card, more } from "./card.js";
import { freshId, h } from "./dom.js";
import { textField } from "./field.js";
import { list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { usualNext } from "./next-step.js";
import { newStep } from "./new-step.js";
import { below } from "./pointer.js";
import { markingsOf, selection } from "./selection.js";
import { stepFields } from "./step-fields.js";
import { operations, task } from "./words.js";

/** stepForm shows all steps and the button for another. */
export function stepForm(c) {
  const steps = list(c.job.document.steps);
  const id = freshId("operation");
  const markings = list(c.job.document.markings).length;
  const select = h("select", { id }, operations.filter((name) => name !== "mark" || markings > 0).map((name) => h("option", { value: name }, task(name))));
  select.value = "coat";
  const add = h("button", { type: "button", "data-focus": "/steps+", onclick: () => addStep(c, select.value) }, "Add step");
  return h("section", { "aria-labelledby": "steps-head" },
    h("h3", { id: "steps-head" }, "Steps, in order"),
    steps.length > 1 ? h("p", { class: "hint" }, "Alt with ↑ or ↓ moves the step that has the focus.") : null,
    steps.map((step, i) => stepCard(c, step, i, steps.length)),
    nextSteps(c),
    h("div", { class: "add" }, h("label", { for: id }, "Another step"), select, add));
}

function nextSteps(c) {
  const offers = usualNext(c);
  if (offers.length === 0) return null;
  return h("p", { class: "next" }, h("span", {}, "Usual next"), offers.map(({ operation, product, text }) =>
    h("button", { type: "button", class: "small", "data-next": product ?? operation, onclick: () => addStep(c, operation, product) }, text)));
}

function addStep(c, operation, product) {
  const step = newStep(c, operation);
  if (product) step.product = product;
  c.opened.set("step " + step.id, true);
  c.job.reshape((job) => { job.steps = [...list(job.steps), step]; });
  c.focusOn(below("/steps", c.job.document.steps.length - 1));
}

function stepCard(c, step, i, count) {
  const at = below("/steps", i);
  const key = "step " + step.id;
  const [main, rest] = stepFields(c, at, step.operation);
  const title = `${i + 1}. ${task(step.operation)}`;
  const target = step.operation === "mark" ? markingsOf(c, below(at, "markings")) : selection(c, below(at, "on"));
  const names = [textField(c, below(at, "name"), { label: "Name" }), textField(c, below(at, "id"), { label: "Short name" })];
  const move = (to) => { c.job.reshape((job) => swap(job.steps, i, to)); c.focusOn(below("/steps", to)); };
  const shown = card(c, { at, key, title, note: step.name ?? "", open: count <= 3 && step.operation === "coat" },
    h("div", { class: "fields" }, main, target),
    more(c, key + " more", "Hours, losses, masking and names", [...rest, ...names]),
    h("div", { class: "acts" },
      act(c, "↑ Up", `Move step ${i + 1} up`, (job) => swap(job.steps, i, i - 1), () => below("/steps", i - 1), { disabled: i === 0 }),
      act(c, "↓ Down", `Move step ${i + 1} down`, (job) => swap(job.steps, i, i + 1), () => below("/steps", i + 1), { disabled: i === count - 1 }),
      act(c, "Duplicate", `Duplicate step ${i + 1}`, (job) => duplicate(job, i), () => below("/steps", i + 1)),
      act(c, "Remove", `Remove step ${i + 1}`, (job) => job.steps.splice(i, 1), () => "/steps+")));
  shown.querySelector("summary").addEventListener("keydown", (event) => {
    const to = event.altKey ? { ArrowUp: i - 1, ArrowDown: i + 1 }[event.key] : undefined;
    if (to === undefined) return;
    event.preventDefault();
    if (to >= 0 && to < count) move(to);
  });
  return shown;
}

function swap(steps, i, j) {
  [steps[i], steps[j]] = [steps[j], steps[i]];
}

function duplicate(job, i) {
  const copy = structuredClone(job.steps[i]);
  copy.id = freeId(job.steps, String(copy.id ?? copy.operation).replace(/-\d+$/, ""));
  job.steps.splice(i + 1, 0, copy);
}

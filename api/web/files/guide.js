// The short way: a few questions, and the list of what to buy for one panel.
import { h } from "./dom.js";
import { fieldValue, unitName } from "./units.js";

const questions = [["width_m", "Width of the panel", "1.2"], ["height_m", "Height of the panel", "0.8"]];
const inFeet = { width_m: "4", height_m: "2 ft 6 in" };

/** askPanel asks for the sizes of a panel; it answers the job, or null where somebody thought better of it. */
export function askPanel(example, system) {
  return new Promise((resolve) => {
    const inputs = questions.map(([name, label, usual]) => ask(name, label, system === "us" ? inFeet[name] : usual, system));
    const count = ask("count", "How many alike", "1");
    const sides = h("select", { id: "guide-sides" }, h("option", { value: 1 }, "one side"), h("option", { value: 2 }, "both sides"));
    const dialog = h("dialog", { "aria-labelledby": "guide-head", class: "guide" },
      h("form", { method: "dialog" }, h("h2", { id: "guide-head" }, "Primer for a panel"),
        h("p", { class: "hint" }, "Measure it; a bare number is taken in the unit beside it, and 127 cm or 4 ft 2 in will do. Everything can be changed afterwards."),
        h("div", { class: "fields" }, inputs.map((one) => one.field), count.field, h("div", { class: "field" }, h("label", { for: "guide-sides" }, "Primed on"), sides)),
        h("div", { class: "acts" }, h("button", { value: "go", "data-guide": "go" }, "Show what I need"), h("button", { value: "", formnovalidate: true, "data-guide": "back" }, "Not now"))));
    dialog.addEventListener("close", () => {
      dialog.remove();
      if (dialog.returnValue !== "go") return resolve(null);
      const [width, height] = inputs.map((one) => fieldValue(one.input.value, "m", system));
      resolve(panelJob(example, { width_m: width, height_m: height, sides: Number(sides.value) }, fieldValue(count.input.value, "", system)));
    });
    document.body.append(dialog);
    dialog.showModal();
    inputs[0].input.select();
  });
}

function ask(name, label, value, system) {
  const unit = system && unitName("m", system);
  const input = h("input", { type: "text", id: "guide-" + name, name: "guide-" + name, autocomplete: "off", required: true, value });
  return { input, field: h("div", { class: "field" }, h("label", { for: input.id }, label, unit ? [" ", h("span", { class: "unit" }, unit)] : null), input) };
}

/** panelJob is the example of one panel with other sizes. */
function panelJob(example, sizes, count) {
  const job = structuredClone(example);
  job.name = "Primer for a panel";
  Object.assign(job.components[0], { name: "panel", count: count === 1 ? undefined : count });
  Object.assign(job.components[0].shape, sizes);
  return job;
}

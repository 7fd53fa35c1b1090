// A form that asks one calculator by GET, and shows the address and the
// spreadsheet formula that ask the same.

import { h, fill, freshId } from "./dom.js";
import { address, formula } from "./docs-formula.js";
import { answerOf, bodyOf, exampleOf, kindsOf, nameOf, resolve, words } from "./docs-schema.js";

/** tryForm is a folded form for the calculator at a path. */
export function tryForm(doc, path, item) {
  const state = { doc, path, item, example: exampleOf(item.post), inputs: new Map() };
  const details = h("details", {}, h("summary", {}, "Try it, and take it into a spreadsheet"));
  details.addEventListener("toggle", () => {
    if (details.open && details.childElementCount === 1) details.append(form(state));
  });
  return details;
}

function form(state) {
  const { doc, item, example } = state;
  const asked = h("div", {});
  const results = h("div", {});
  const union = kindsOf(doc, bodyOf(item.post));
  const choice = union ? kindChoice(union, example[union.key]) : null;
  const show = () => {
    const schema = union ? union.kinds.get(choice.value) : resolve(doc, bodyOf(item.post));
    const shown = union && choice.value !== example[union.key] ? {} : example;
    fill(asked, fields(state, schema, shown, union?.key));
    update(state, results, choice, union?.key);
  };
  const field = fieldChoice(state);
  state.field = field.control;
  const element = h("form", { class: "try", onsubmit: (event) => { event.preventDefault(); ask(state, results, choice, union?.key); } },
    choice ? h("div", { class: "asked" }, labelled(union.key, choice)) : null,
    asked, h("div", { class: "asked" }, field.element),
    h("div", { class: "acts" }, h("button", { type: "submit" }, "Ask")), results);
  element.addEventListener("input", () => update(state, results, choice, union?.key));
  choice?.addEventListener("change", show);
  state.field.addEventListener("change", () => update(state, results, choice, union?.key));
  show();
  return element;
}

function kindChoice(union, kind) {
  return h("select", { value: kind }, [...union.kinds.keys()].map((one) => h("option", { selected: one === kind }, one)));
}

function labelled(name, control, unit) {
  control.id = freshId("try");
  return h("div", {}, h("label", { for: control.id }, name, unit ? h("span", { class: "unit" }, unit) : null), control);
}

/** fields lists what must or is shown to be given, and folds the others away. */
function fields(state, schema, example, key) {
  state.inputs = new Map();
  const required = new Set(schema.required ?? []);
  const first = [], others = [];
  for (const [name, one] of Object.entries(schema.properties)) {
    if (name === key) continue;
    const control = input(one, example[name], required.has(name));
    state.inputs.set(name, control);
    const element = labelled(required.has(name) ? `${name}, needed` : name, control, one["x-unit"]);
    if (control.tagName === "TEXTAREA") element.className = "long";
    (required.has(name) || example[name] !== undefined ? first : others).push(element);
  }
  return [h("div", { class: "asked" }, first),
    others.length > 0 ? h("details", {}, h("summary", {}, others.length === 1 ? "1 more field" : `${others.length} more fields`), h("div", { class: "asked" }, others)) : null];
}

function input(schema, shown, required) {
  const whole = typeof shown === "object" || schema.type === "array" || (nameOf(schema) !== null && words(schema).part);
  const text = shown === undefined ? "" : whole ? JSON.stringify(shown) : String(shown);
  if (whole) return h("textarea", { rows: "3", required, value: text, spellcheck: "false" });
  const choices = schema.enum ?? (schema.type === "boolean" ? ["true", "false"] : null);
  if (choices) return h("select", {}, h("option", { value: "" }, ""), choices.map((one) => h("option", { selected: one === text }, one)));
  return h("input", { type: "text", required, value: text, placeholder: schema.default === undefined ? "" : String(schema.default), autocomplete: "off" });
}

/** fieldChoice offers the single values of the answer. */
function fieldChoice({ doc, item }) {
  const answer = resolve(doc, answerOf(item.get));
  const single = Object.entries(answer.properties).filter(([, one]) => nameOf(one) === "Amount" || ["number", "integer", "string", "boolean"].includes(one.type)).map(([name]) => name);
  const usual = item.get.parameters.find((p) => p.name === "field").example;
  const control = h("select", {}, single.map((name) => h("option", { selected: name === usual }, name)));
  return { control, element: labelled("field, for the spreadsheet", control) };
}

/** values lists the names and values that are given, the kind first. */
function values(state, choice, key) {
  const given = [...state.inputs].map(([name, control]) => [name, control.value.trim()]);
  return choice ? [[key, choice.value], ...given] : given;
}

function update(state, results, choice, key) {
  const given = values(state, choice, key);
  const whole = address(location.origin, state.path, given);
  const cell = formula(address(location.origin, state.path, [...given, ["field", state.field.value]]));
  fill(results,
    h("h4", {}, "Address"), h("pre", { class: "wrapped" }, whole),
    h("h4", {}, "Spreadsheet formula"), h("pre", { class: "wrapped" }, cell),
    h("div", { class: "acts" }, copyButton("Copy the formula", cell), copyButton("Copy the address", whole)),
    h("p", { class: "hint" }, "It gives text with a decimal point; NUMBERVALUE(…,\".\") around it makes a number everywhere. The spreadsheet must be able to reach this host."),
    h("output", {}));
}

function copyButton(label, text) {
  const button = h("button", { type: "button", class: "small", onclick: async () => {
    try {
      await navigator.clipboard.writeText(text);
      button.textContent = "Copied";
    } catch {
      button.textContent = "Not allowed here: select the text above";
    }
    setTimeout(() => { button.textContent = label; }, 2000);
  } }, label);
  return button;
}

async function ask(state, results, choice, key) {
  const output = results.querySelector("output");
  try {
    const response = await fetch(address("", state.path, values(state, choice, key)), { headers: { Accept: "application/json" } });
    const text = JSON.stringify(await response.json(), null, 1);
    output.className = response.ok ? "" : "refused";
    fill(output, h("h4", {}, response.ok ? "Answer" : `Refused: ${response.status} ${response.statusText}`), h("pre", { class: "long", tabindex: "0" }, text));
  } catch (error) {
    output.className = "refused";
    fill(output, h("pre", {}, `The service does not answer: ${error.message}`));
  }
}

// One labelled field of the job: it shows the value at a JSON pointer and
// writes what is typed there. Each holds a place for its fault.
import { freshId, h } from "./dom.js";
import { isRange } from "./lenient.js";
import { below } from "./pointer.js";
import { label as labelOf } from "./words.js";
import { fieldText, limitsText, numberOrRange, suffixOf, unitName } from "./units.js";

/** holder is what a field stands in; faults find it by its pointer. */
export function holder(at, properties, ...children) {
  return h("div", { "data-at": at, ...properties }, ...children, h("p", { class: "fault", hidden: true, id: freshId("fault") }));
}

function labelled(at, input, { label, unit, hint, wide }) {
  const id = freshId("field");
  input.id = id;
  input.name = at;
  const note = hint ? h("p", { class: "hint", id: id + "-hint" }, hint) : null;
  if (note) input.setAttribute("aria-describedby", note.id);
  const named = [h("label", { for: id }, label, unit ? [" ", h("span", { class: "unit" }, unit)] : null)];
  return holder(at, { class: wide ? "field wide" : "field" }, named, input, note);
}

/**
 * numberField takes a number, bare or with a unit of its own. options: label,
 * name (for label and unit), plain (no unit), hint, limits, empty (shown while
 * nothing is given).
 */
export function numberField(c, at, options) {
  const { name } = options;
  const value = c.job.value(at);
  if (isRange(value)) return rangeField(c, at, options);
  const suffix = options.plain ? "" : suffixOf(name);
  const hint = [options.hint, limitsText(options.limits, c.system)].filter(Boolean).join(" · ");
  const input = h("input", {
    type: "text", autocomplete: "off", spellcheck: "false", placeholder: options.empty, value: fieldText(value, suffix, c.system),
    inputmode: suffix === "m" || suffix === "mm" || suffix === "um" ? "text" : "decimal",
    oninput: () => c.job.set(at, numberOrRange(input.value, suffix, c.system)),
    onchange: () => { if (isRange(c.job.value(at))) { c.job.reshape(() => {}); c.focusOn(below(at, "likely")); } },
  });
  return labelled(at, input, { label: options.label ?? labelOf(name), unit: unitName(suffix, c.system), hint });
}

/** rangeField takes the three numbers of {"low", "likely", "high"}. */
function rangeField(c, at, options) {
  const unit = unitName(suffixOf(options.name), c.system);
  const parts = ["low", "likely", "high"].map((part) =>
    numberField(c, below(at, part), { name: options.name, label: part.charAt(0).toUpperCase() + part.slice(1) }));
  const single = h("button", { type: "button", class: "small", onclick: () => { c.job.reshape(() => c.job.set(at, c.job.value(below(at, "likely")))); c.focusOn(at); } }, "One number");
  const legend = h("legend", {}, options.label ?? labelOf(options.name), unit ? [" ", h("span", { class: "unit" }, unit)] : null);
  return holder(at, { class: "field range" }, h("fieldset", {}, legend, h("div", { class: "three" }, parts), single));
}

/** textField takes free text. options: label, hint, lines (may have several), onchange (after leaving it). */
export function textField(c, at, options) {
  const input = h(options.lines ? "textarea" : "input", {
    type: options.lines ? null : "text", rows: options.lines ? 2 : null, autocomplete: "off", value: c.job.value(at) ?? "",
    oninput: options.onchange ? undefined : () => c.job.set(at, input.value || undefined),
    onchange: options.onchange ? () => options.onchange(input.value.trim()) : undefined,
  });
  return labelled(at, input, options);
}

/**
 * choiceField takes one of some values. options: label, hint, empty (what no
 * choice means; left out when one must be made), values [{value, text, group}],
 * value (where it is not what stands at the pointer), onchange, wide (a row of
 * its own).
 */
export function choiceField(c, at, options) {
  const value = options.value ?? c.job.value(at);
  const known = options.values.map((entry) => ({ text: String(entry.value), ...entry }));
  if (value !== undefined && !known.some((entry) => entry.value === value)) {
    known.push({ value, text: `${fieldText(value, "", "si")} (not known here)` });
  }
  if (options.empty || value === undefined) known.unshift({ value: undefined, text: options.empty ?? "choose" });
  const select = h("select", {
    onchange: () => (options.onchange ?? ((chosen) => c.job.set(at, chosen)))(known[select.selectedIndex].value),
  }, optionsOf(known));
  select.selectedIndex = known.findIndex((entry) => entry.value === value);
  return labelled(at, select, options);
}

function optionsOf(known) {
  const groups = new Map();
  return known.flatMap((entry) => {
    const option = h("option", {}, entry.text);
    if (!entry.group) return [option];
    const group = groups.get(entry.group);
    if (group) return (group.append(option), []);
    groups.set(entry.group, h("optgroup", { label: entry.group }, option));
    return [groups.get(entry.group)];
  });
}

/** checkField takes yes or no. options: label, hint, otherwise (what no value means). */
export function checkField(c, at, { label, hint, otherwise = false }) {
  const id = freshId("field");
  const input = h("input", { type: "checkbox", id, name: at, onchange: () => c.job.set(at, input.checked) });
  input.checked = c.job.value(at) ?? otherwise;
  return holder(at, { class: "field check" }, input, h("label", { for: id }, label, hint ? h("span", { class: "hint" }, hint) : null));
}

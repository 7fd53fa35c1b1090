// A list of small alike things as a table of fields: openings, holes, stations,
// corners, items.
import { freshId, h } from "./dom.js";
import { holder } from "./field.js";
import { isRange, list } from "./lenient.js";
import { below } from "./pointer.js";
import { fieldText, numberOrRange, suffixOf, unitName } from "./units.js";

/**
 * rows shows the list at a pointer. columns: {key, name, label, values, text};
 * key is the member (or index) of a row, name gives the unit, values makes it a
 * choice, text makes it free text. options: title, one (what a row is called),
 * fresh() makes a row, hint.
 */
export function rows(c, at, columns, options) {
  const held = list(c.job.value(at));
  const add = h("button", { type: "button", class: "small", "data-focus": at + "+", onclick: () => append(c, at, options.fresh(held)) }, "Add " + options.one);
  const id = freshId("rows");
  const head = h("tr", {}, columns.map((column) => h("th", { scope: "col" }, column.label, unitOf(c, column))), h("td"));
  const lines = held.map((_, i) => line(c, at, i, columns, options));
  const table = held.length === 0 ? null : h("div", { class: "scroll", role: "group", tabindex: "0", "aria-labelledby": id },
    h("table", { class: "rows" }, h("thead", {}, head), h("tbody", {}, lines)));
  return holder(at, { class: "list" }, h("h4", { id }, options.title), options.hint ? h("p", { class: "hint" }, options.hint) : null, table, add);
}

function unitOf(c, column) {
  const unit = column.name ? unitName(suffixOf(column.name), c.system) : "";
  return unit ? [" ", h("span", { class: "unit" }, unit)] : null;
}

function append(c, at, row) {
  c.job.reshape(() => c.job.set(at, [...list(c.job.value(at)), row]));
  c.focusOn(below(at, list(c.job.value(at)).length - 1));
}

function line(c, at, index, columns, options) {
  const here = below(at, index);
  const which = `${options.one} ${index + 1}`;
  const remove = h("button", {
    type: "button", class: "small plain", "aria-label": `Remove ${which}`, title: `Remove ${which}`,
    onclick: () => { c.job.reshape(() => c.job.set(here, undefined)); c.focusOn(at + "+"); },
  }, "✕");
  return h("tr", { "data-at": here }, columns.map((column) => h("td", {}, cell(c, below(here, column.key), column, which))), h("td", {}, remove));
}

function cell(c, at, column, which) {
  const suffix = column.name ? suffixOf(column.name) : "";
  const value = c.job.value(at);
  const named = { name: at, "aria-label": `${which}, ${column.label.toLowerCase()}` };
  if (column.values) {
    const entries = [undefined, ...column.values];
    const select = h("select", { ...named, onchange: () => c.job.set(at, entries[select.selectedIndex]) },
      entries.map((entry) => h("option", {}, entry === undefined ? "–" : String(entry).replaceAll("_", " "))));
    select.selectedIndex = entries.indexOf(value);
    return holder(at, { class: "cell" }, select);
  }
  const input = h("input", { ...named, type: "text", autocomplete: "off", size: column.text ? 16 : 7, value: cellText(value, suffix, c.system) });
  input.addEventListener("input", () => c.job.set(at, column.text ? input.value || undefined : numberOrRange(input.value, suffix, c.system)));
  return holder(at, { class: "cell" }, input);
}

/** A range stands in a cell as "1400 / 1800 / 2600". */
function cellText(value, suffix, system) {
  if (!isRange(value)) return fieldText(value, suffix, system);
  return ["low", "likely", "high"].map((part) => fieldText(value[part], suffix, system)).join(" / ");
}

// The holes of a panel, each with the fields of its form.
import { freshId, h } from "./dom.js";
import { choiceField, holder, numberField } from "./field.js";
import { list } from "./lenient.js";
import { below } from "./pointer.js";
import { rows } from "./rows.js";

const forms = {
  round: { text: "Round", sizes: ["diameter_m"], fresh: { diameter_m: 0.1 } },
  rectangle: { text: "Rectangle", sizes: ["width_m", "height_m", "corner_radius_m"], fresh: { width_m: 0.2, height_m: 0.1 } },
  outline: { text: "Straight sides", sizes: ["outline"], fresh: { outline: [[0.1, 0.1], [0.3, 0.1], [0.2, 0.25]] } },
};

const optional = { corner_radius_m: "0" };
const corners = [{ key: 0, name: "x_m", label: "From the left" }, { key: 1, name: "y_m", label: "From the bottom" }];

function formOf(hole) {
  return Object.keys(forms).find((form) => forms[form].sizes.some((name) => hole[name] !== undefined)) ?? "round";
}

/** holeRows shows the list at a pointer, and the button for another. */
export function holeRows(c, at, { title, hint }) {
  const held = list(c.job.value(at));
  const id = freshId("holes");
  const add = h("button", { type: "button", class: "small", "data-focus": at + "+", onclick: () => append(c, at) }, "Add hole");
  return holder(at, { class: "list", role: "group", "aria-labelledby": id }, h("h4", { id }, title), h("p", { class: "hint" }, hint),
    held.map((hole, i) => one(c, at, i, hole, held.length)), add);
}

function append(c, at) {
  c.job.reshape(() => c.job.set(at, [...list(c.job.value(at)), structuredClone(forms.round.fresh)]));
  c.focusOn(below(at, list(c.job.value(at)).length - 1, "diameter_m"));
}

function one(c, at, index, hole, count) {
  const here = below(at, index);
  const form = formOf(hole);
  const shape = choiceField(c, here + "/", {
    label: "Form", values: Object.entries(forms).map(([value, { text }]) => ({ value, text })), value: form,
    onchange: (chosen) => { c.job.reshape(() => reform(c, here, hole, chosen)); c.focusOn(here + "/"); },
  });
  const sizes = forms[form].sizes.map((name) => name === "outline"
    ? rows(c, below(here, name), corners, { title: "Corners", one: "corner", fresh: (now) => structuredClone(now.at(-1) ?? [0, 0]) })
    : numberField(c, below(here, name), { name, empty: optional[name] }));
  const empty = count === 1 ? "in the middle" : undefined;
  const place = form === "outline" ? [] : [
    numberField(c, below(here, "x_m"), { name: "x_m", label: "Centre from the left", empty }),
    numberField(c, below(here, "y_m"), { name: "y_m", label: "Centre from the bottom", empty })];
  const remove = h("button", {
    type: "button", class: "small", "aria-label": `Remove hole ${index + 1}`,
    onclick: () => { c.job.reshape(() => c.job.set(here, undefined)); c.focusOn(at + "+"); },
  }, "Remove");
  return holder(here, { class: "hole" }, h("fieldset", {}, h("legend", {}, `Hole ${index + 1}`), h("div", { class: "fields" }, shape, sizes, place)), remove);
}

/** reform gives a hole the sizes of another form; its place stays, where the form has one. */
function reform(c, here, hole, chosen) {
  const { x_m, y_m } = hole;
  c.job.set(here, { ...structuredClone(forms[chosen].fresh), ...(chosen === "outline" ? {} : { x_m, y_m }) });
}

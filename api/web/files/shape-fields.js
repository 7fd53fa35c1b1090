// The fields of a shape, made from what the server says of its kind.
import { h } from "./dom.js";
import { checkField, choiceField, holder, numberField, textField } from "./field.js";
import { list, object } from "./lenient.js";
import { holeRows } from "./hole-rows.js";
import { below } from "./pointer.js";
import { rows } from "./rows.js";
import { faceTicks } from "./selection.js";
import { choices } from "./choices.js";
import { label, sentence } from "./words.js";

/** shapeFields returns [what everybody fills in, the rest]. */
export function shapeFields(c, at, kind) {
  const entry = c.catalogue.shapes.find((shape) => shape.kind === kind);
  if (!entry) return [[h("p", { class: "hint" }, `There is no form for the shape “${kind}”; change it in the job text.`)], []];
  const example = object(entry.example);
  const main = [], rest = [];
  for (const field of entry.fields) {
    const value = c.job.value(below(at, field.name));
    const isList = Array.isArray(value ?? example[field.name] ?? (listNames.has(field.name) ? [] : undefined));
    const given = value !== undefined;
    const usual = isList ? open.has(field.name) || list(value).length > 0 : given || field.name in example;
    (usual && !(optional.has(field.name) && !given) ? main : rest).push(one(c, at, kind, field, example, isList));
  }
  return [main, rest];
}

/** fieldsOf makes the fields of a kind of figure that the server described. */
export function fieldsOf(c, at, entry, fields) {
  const example = object(entry.example);
  return fields.map((field) => one(c, at, entry.kind, field, example, Array.isArray(c.job.value(below(at, field.name)) ?? example[field.name])));
}

const listNames = new Set(["outline", "holes", "stations"]);
const open = new Set(["holes", "stations"]); // shown even where there are none yet
const optional = new Set(["corner_radius_m", "thickness_mm", "trailing_edge", "camber_ratio", "camber_position_ratio"]);

function one(c, shapeAt, kind, field, example, isList) {
  const at = below(shapeAt, field.name);
  if (isList) return listField(c, at, kind, field, list(example[field.name]));
  const sample = c.job.value(at) ?? example[field.name];
  const words = choices(field.name, kind);
  if (words) return choiceField(c, at, { label: label(field.name), hint: field.doc, empty: "default", values: named(words) });
  if (sample !== null && typeof sample === "object" && !("likely" in sample)) return groupField(c, at, kind, field, sample, object(example[field.name]));
  if (typeof sample === "boolean") return checkField(c, at, { label: label(field.name), hint: field.doc, otherwise: example[field.name] ?? false });
  if (typeof sample === "string" && !field.unit && !field.limits) return textField(c, at, { label: label(field.name), hint: field.doc, lines: field.name === "text" });
  return numberField(c, at, { name: field.name, plain: Boolean(field.limits && !field.unit), hint: field.doc, limits: field.limits });
}

function named(words) {
  return words.map((value) => ({ value, text: typeof value === "number" ? String(value) : sentence(value) }));
}

/** groupField shows an object within a shape, such as the profile of a bar. */
function groupField(c, at, kind, field, sample, example) {
  const names = [...new Set([...Object.keys(sample), ...Object.keys(example)])];
  const fields = names.map((name) => one(c, at, kind, { name }, sample, Array.isArray(sample[name])));
  return holder(at, { class: "group" }, h("fieldset", {}, h("legend", {}, label(field.name)), h("p", { class: "hint" }, field.doc), h("div", { class: "fields" }, fields)));
}

const columnsOf = {
  outline: [{ key: 0, name: "x_m", label: "Across, x" }, { key: 1, name: "y_m", label: "Up, y" }],
  profile: [{ key: 0, name: "x_m", label: "Along, x" }, { key: 1, name: "r_m", label: "From the axis, r" }],
  points: [{ key: 0, name: "x_m", label: "Across, x" }, { key: 1, name: "y_m", label: "Up, y" }],
  stations: ["x_m", "width_m", "height_m", "exponent", "z_m"].map(column),
};

function column(name) {
  return { key: name, name, label: name === "x_m" ? "Position, x" : label(name) };
}

const called = { outline: "corner", stations: "station", profile: "point" };

function listField(c, at, kind, field, example) {
  if (field.name === "holes") return holeRows(c, at, { title: label(field.name), hint: field.doc });
  const held = list(c.job.value(at));
  const sample = held[0] ?? example[0] ?? {};
  if (typeof sample === "string") return faceTicks(c, at, kind, label(field.name), field.doc);
  const columns = columnsOf[field.name] ?? Object.keys(sample).map(column);
  const fresh = (now) => structuredClone(now.at(-1) ?? example[0] ?? {});
  return rows(c, at, columns, { title: label(field.name), one: called[field.name] ?? "row", hint: field.doc, fresh });
}

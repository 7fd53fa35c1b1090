// Markings: figures painted over the base, each with its drawing and its place.
import { act, card, more } from "./card.js";
import { freshId, h } from "./dom.js";
import { choiceField, numberField, textField } from "./field.js";
import { list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { placeFields } from "./place-fields.js";
import { below } from "./pointer.js";
import { fieldsOf } from "./shape-fields.js";
import { sketch } from "./sketch.js";
import { sentence } from "./words.js";

const common = ["stencil_margin_mm", "under_colour", "skin_radius_m", "skin_axis", "sizes"];
const lists = new Set(["rings", "bands", "points"]);

/** markingForm shows all markings and the button for another. */
export function markingForm(c) {
  const markings = list(c.job.document.markings);
  const id = freshId("figure");
  const select = h("select", { id }, c.catalogue.markings.map((entry) => h("option", { value: entry.kind }, `${sentence(entry.kind)}: ${entry.doc}`)));
  const add = h("button", { type: "button", "data-focus": "/markings+", onclick: () => addMarking(c, select.value) }, "Add marking");
  return h("section", { "aria-labelledby": "markings-head" },
    h("h3", { id: "markings-head" }, "Markings"),
    markings.map((marking, i) => markingCard(c, marking, i)),
    h("div", { class: "add" }, h("label", { for: id }, "Another figure"), select, add));
}

/** startOf is the example of a kind without what is left to its default. */
function startOf({ kind, example }) {
  const own = Object.entries(example).filter(([name, value]) => value !== null && value !== "" && !common.includes(name));
  return { kind, ...structuredClone(Object.fromEntries(own)) };
}

function addMarking(c, kind) {
  const id = freeId(c.job.document.markings, kind.replaceAll("_", "-"));
  c.opened.set("marking " + id, true);
  c.job.reshape((job) => {
    const on = list(job.components)[0]?.id;
    job.markings = [...list(job.markings), { id, ...startOf(c.catalogue.markings.find((entry) => entry.kind === kind)), count: 1, ...(on ? { on } : {}) }];
    for (const step of list(job.steps)) if (step.operation === "mark" && Array.isArray(step.markings)) step.markings.push(id);
  });
  c.focusOn(below("/markings", c.job.document.markings.length - 1));
}

function markingCard(c, marking, i) {
  const at = below("/markings", i);
  const key = "marking " + marking.id;
  const title = marking.id || `marking ${i + 1}`;
  const entry = c.catalogue.markings.find((known) => known.kind === marking.kind);
  const [main, rest] = entry ? figureFields(c, at, marking, entry) : [h("p", { class: "hint" }, "There is no form for this figure; change it in the job text."), []];
  return card(c, { at, key, title, note: `${sentence(marking.kind ?? "no figure")}${Number(marking.count) > 1 ? ` × ${marking.count}` : ""}`, open: false },
    h("div", { class: "fields" }, main, numberField(c, below(at, "count"), { name: "count", label: "How many in all", empty: "1" }), onField(c, at)),
    sketch(at, title, marking.kind, "marking"),
    more(c, key + " place", "Where it stands", placeFields(c, at, marking)),
    more(c, key + " more", "Name, stencil, curved skin", [textField(c, below(at, "id"), { label: "Short name", onchange: (to) => c.job.reshape((job) => rename(job, i, to)) }), rest]),
    h("div", { class: "acts" }, act(c, "Remove", `Remove ${title}`, (job) => remove(job, i), () => "/markings+")));
}

function figureFields(c, at, marking, entry) {
  const usual = ({ name }) => marking[name] !== undefined || !(common.includes(name) || entry.example[name] === null || entry.example[name] === "");
  const known = entry.fields.filter(({ name, unit, limits }) => marking[name] !== undefined || entry.example[name] !== null || unit || limits || lists.has(name));
  return [fieldsOf(c, at, entry, known.filter(usual)), fieldsOf(c, at, entry, known.filter((field) => !usual(field)))];
}

/** onField offers the parts and their faces. */
function onField(c, at) {
  const parts = list(c.job.document.components).filter((part) => part.id);
  const values = parts.flatMap((part) => [{ value: part.id, text: part.name || part.id },
    ...(c.faces.of(part.id) ?? []).map((face) => ({ value: `${part.id}/${face}`, text: `${part.name || part.id}: ${face}` }))]);
  return choiceField(c, below(at, "on"), { label: "Painted on", empty: "not said", wide: true, values });
}

function rename(job, i, to) {
  const from = job.markings[i].id;
  job.markings[i].id = to;
  for (const step of list(job.steps)) if (Array.isArray(step.markings)) step.markings = step.markings.map((id) => (id === from ? to : id));
}

/** remove takes a marking away, also out of the steps that paint others besides. */
function remove(job, i) {
  const [gone] = job.markings.splice(i, 1);
  for (const step of list(job.steps)) {
    const left = list(step.markings).filter((id) => id !== gone.id);
    if (left.length > 0) step.markings = left;
  }
}

// What a step works on: parts, regions, and single faces of parts.
import { freshId, h } from "./dom.js";
import { holder } from "./field.js";
import { list } from "./lenient.js";
import { sentence } from "./words.js";

/** selection shows the choice at a pointer as boxes to tick. */
export function selection(c, at) {
  const job = c.job.document;
  const chosen = list(c.job.value(at));
  const whole = [...list(job.components), ...list(job.regions)].filter((entry) => entry.id).map((entry) => ({ value: entry.id, text: entry.name || entry.id }));
  const faces = list(job.components).flatMap((part) => facesOf(c, part).map((face) => ({ value: `${part.id}/${face}`, text: `${part.name || part.id}: ${face.replaceAll("_", " ")}` })));
  const known = new Set([...whole, ...faces].map((entry) => entry.value));
  const unknown = chosen.filter((name) => !known.has(name)).map((value) => ({ value, text: `${value} (not in the job)` }));
  const someFace = faces.some((face) => chosen.includes(face.value));
  return boxes(c, at, "Done on", [...whole, ...unknown], faces.length === 0 ? null :
    h("details", { class: "more", open: someFace }, h("summary", {}, "Only some faces"), h("div", { class: "ticks" }, faces.map((face) => tick(c, at, face)))));
}

/** markingsOf shows which markings a step paints. */
export function markingsOf(c, at) {
  return boxes(c, at, "Markings painted", list(c.job.document.markings).map((marking) => ({ value: marking.id, text: `${marking.id} (${String(marking.kind).replaceAll("_", " ")})` })));
}

/** faceTicks shows a list of faces of a kind of shape as boxes to tick. */
export function faceTicks(c, at, kind, title, hint) {
  const faces = c.catalogue.shapes.find((shape) => shape.kind === kind)?.faces ?? [];
  return boxes(c, at, title, faces.map((face) => ({ value: face, text: sentence(face) })), h("p", { class: "hint" }, hint));
}

function facesOf(c, part) {
  const faces = c.catalogue.shapes.find((shape) => shape.kind === part.shape?.kind)?.faces ?? [];
  if (part.shape?.kind !== "panel") return faces.length > 1 ? faces : [];
  return Number(part.shape.sides) === 2 ? ["front", "back"] : [];
}

function boxes(c, at, title, entries, extra = null) {
  return holder(at, { class: "field wide" }, h("fieldset", {}, h("legend", {}, title), h("div", { class: "ticks" }, entries.map((entry) => tick(c, at, entry))), extra));
}

function tick(c, at, { value, text }) {
  const id = freshId("tick");
  const box = h("input", { type: "checkbox", id, onchange: () => c.job.set(at, toggled(list(c.job.value(at)), value, box.checked)) });
  box.checked = list(c.job.value(at)).includes(value);
  return h("div", { class: "tick" }, box, h("label", { for: id }, text));
}

function toggled(names, name, on) {
  const left = names.filter((other) => other !== name);
  return on ? [...left, name] : left;
}

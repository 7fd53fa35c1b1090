// What a step works on: parts, regions, and single faces of parts.
import { fill, freshId, h } from "./dom.js";
import { holder } from "./field.js";
import { list } from "./lenient.js";
import { sentence } from "./words.js";

/** selection shows the choice at a pointer as boxes to tick. */
export function selection(c, at, { title = "Done on", regions = true } = {}) {
  const job = c.job.document;
  const parts = list(job.components).filter((part) => part.id);
  const whole = [...parts, ...list(regions ? job.regions : []).filter((entry) => entry.id)].map((entry) => ({ value: entry.id, text: entry.name || entry.id }));
  const known = (name) => whole.some((entry) => entry.value === name) || parts.some((part) => isFaceOf(name, part));
  const unknown = list(c.job.value(at)).filter((name) => !known(name)).map((value) => ({ value, text: `${value} (not in the job)` }));
  return boxes(c, at, title, [...whole, ...unknown], someFaces(c, at, parts));
}

/** someFaces offers single faces; it stays true to what the parts have. */
function someFaces(c, at, parts) {
  const ticks = h("div", { class: "ticks" });
  const details = h("details", { class: "more" }, h("summary", {}, "Only some faces"), ticks);
  const offer = () => {
    const faces = parts.flatMap((part) => facesOf(c, at, part));
    details.hidden = faces.length === 0;
    fill(ticks, faces.map((face) => tick(c, at, face)));
    return faces;
  };
  c.refreshed.set(details, offer);
  details.setAttribute("data-refreshed", "");
  const chosen = new Set(list(c.job.value(at)));
  details.open = offer().some((face) => chosen.has(face.value));
  return details;
}

/** facesOf lists the faces of a part that can be chosen, and those that are. */
function facesOf(c, at, part) {
  const present = c.faces.of(part.id);
  const chosen = list(c.job.value(at)).filter((name) => isFaceOf(name, part)).map((name) => name.slice(part.id.length + 1));
  const names = new Set([...(present?.length > 1 ? present : []), ...chosen]);
  return [...names].map((face) => ({
    value: `${part.id}/${face}`,
    text: `${part.name || part.id}: ${face.replaceAll("_", " ")}${!present || present.includes(face) ? "" : " (not on it now)"}`,
  }));
}

function isFaceOf(name, part) {
  return String(name).startsWith(part.id + "/");
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

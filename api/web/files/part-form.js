// The parts: what is treated, and its sizes.
import { act, card, more } from "./card.js";
import { choices } from "./choices.js";
import { freshId, h } from "./dom.js";
import { choiceField, numberField, textField } from "./field.js";
import { list } from "./lenient.js";
import { copyPart, newPart } from "./new-part.js";
import { below } from "./pointer.js";
import { forgetPart, renamePart, treatLike } from "./references.js";
import { rows } from "./rows.js";
import { shapeFields } from "./shape-fields.js";
import { sketch } from "./sketch.js";
import { sentence } from "./words.js";

/** partForm shows all parts and the button for another. */
export function partForm(c) {
  const parts = list(c.job.document.components);
  const id = freshId("kind");
  const select = h("select", { id }, c.catalogue.shapes.map((shape) => h("option", { value: shape.kind }, `${sentence(shape.kind)}: ${shape.doc}`)));
  select.value = "panel";
  const add = h("button", { type: "button", "data-focus": "/components+", onclick: () => addPart(c, select.value) }, "Add part");
  return h("section", { "aria-labelledby": "parts-head" },
    h("h3", { id: "parts-head" }, "Parts and their sizes"),
    h("p", { class: "hint" }, "Type a size as you measured it: 1.27, 127 cm, 50 in, 4 ft 2 in. Where you are not sure: 1.2 / 1.3 / 1.5, which is low / likely / high."),
    parts.map((part, i) => partCard(c, part, i, parts.length)),
    h("div", { class: "add" }, h("label", { for: id }, "Another part, shaped like"), select, add));
}

function addPart(c, kind) {
  const shape = c.catalogue.shapes.find((entry) => entry.kind === kind);
  let at;
  c.job.reshape((job) => {
    const part = newPart(job, shape);
    const first = list(job.components)[0];
    job.components = [...list(job.components), part];
    if (first) treatLike(job, part.id, first.id);
    at = below("/components", job.components.length - 1);
    c.opened.set("part " + part.id, true);
  });
  c.focusOn(at);
}

function partCard(c, part, i, count) {
  const at = below("/components", i);
  const kind = part.shape?.kind;
  const [main, rest] = shapeFields(c, below(at, "shape"), kind);
  const title = part.name || part.id || `part ${i + 1}`;
  const key = "part " + part.id;
  return card(c, { at, key, title, note: `${(sentence(kind ?? "no shape"))}${Number(part.count) > 1 ? ` × ${part.count}` : ""}`, open: count <= 2 || i === 0 },
    h("div", { class: "fields" }, main, numberField(c, below(at, "count"), { name: "count", label: "How many alike", empty: "1" })),
    sketch(below(at, "shape"), title, kind),
    more(c, key + " shape", "More sizes", rest),
    more(c, key + " more", "What it is made of, openings, old paint", materialFields(c, at, part, i)),
    h("div", { class: "acts" },
      act(c, "Duplicate", `Duplicate ${title}`, (job) => duplicate(job, i), () => below("/components", i + 1)),
      act(c, "Remove", `Remove ${title}`, (job) => remove(job, i), () => "/components+")));
}

function duplicate(job, i) {
  const copy = copyPart(job, job.components[i]);
  job.components.splice(i + 1, 0, copy);
  treatLike(job, copy.id, job.components[i].id);
}

function remove(job, i) {
  const [gone] = job.components.splice(i, 1);
  if (gone.id) forgetPart(job, gone.id);
}

function materialFields(c, at, part, i) {
  const shapes = c.catalogue.shapes;
  const kind = part.shape?.kind;
  const change = (chosen) => c.job.reshape((job) => { job.components[i].shape = { kind: chosen, ...structuredClone(shapes.find((shape) => shape.kind === chosen).example) }; });
  return [
    textField(c, below(at, "name"), { label: "Name" }),
    textField(c, below(at, "id"), { label: "Short name", hint: "by which steps speak of it", onchange: (to) => c.job.reshape((job) => renamePart(job, i, to)) }),
    choiceField(c, below(at, "shape", "kind"), { label: "Shape", hint: "another shape brings sizes of its own", values: shapes.map((shape) => ({ value: shape.kind, text: sentence(shape.kind) })), onchange: change }),
    choiceField(c, below(at, "substrate"), { label: "Made of", empty: "not said", values: choices("substrate").map((value) => ({ value, text: sentence(value) })) }),
    numberField(c, below(at, "skin_mm"), { name: "skin_mm", hint: "thickness of the skin" }),
    numberField(c, below(at, "existing_film_um"), { name: "existing_film_um", hint: "thickness of all coats together", empty: "0" }),
    numberField(c, below(at, "existing_film_density_kg_l"), { name: "existing_film_density_kg_l" }),
    numberField(c, below(at, "extra_area_percent"), { name: "extra_area_percent", hint: "for laps, rivets and gaps", empty: "0" }),
    rows(c, below(at, "openings"), openingColumns(c, kind), {
      title: "Openings", one: "opening", hint: "what is not painted: area off, edge to mask on; of one part",
      fresh: () => ({ area_m2: 0.1, edge_m: 1.3 }),
    }),
  ];
}

function openingColumns(c, kind) {
  const faces = c.catalogue.shapes.find((shape) => shape.kind === kind)?.faces ?? [];
  return [{ key: "name", label: "What", text: true }, { key: "face", label: "Face", values: faces },
    { key: "area_m2", name: "area_m2", label: "Area" }, { key: "edge_m", name: "edge_m", label: "Edge" }];
}

// Regions: named parts of the surface, for steps that treat only some of it.
import { act, card, more } from "./card.js";
import { h } from "./dom.js";
import { numberField, textField } from "./field.js";
import { list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { below } from "./pointer.js";
import { renamePart } from "./references.js";
import { selection } from "./selection.js";

/** regionForm shows all regions and the button for another. */
export function regionForm(c) {
  const regions = list(c.job.document.regions);
  const add = h("button", { type: "button", "data-focus": "/regions+", onclick: () => addRegion(c) }, "Add region");
  return h("section", { "aria-labelledby": "regions-head" },
    h("h3", { id: "regions-head" }, "Regions"),
    h("p", { class: "hint" }, "A named part of the surface that is treated otherwise: a coloured tip, an anti-glare panel."),
    regions.map((region, i) => regionCard(c, region, i)), h("p", { class: "add-one" }, add));
}

function addRegion(c) {
  const id = freeId(c.job.document.regions, "region");
  c.opened.set("region " + id, true);
  c.job.reshape((job) => {
    const first = list(job.components)[0]?.id;
    job.regions = [...list(job.regions), { id, of: first ? [first] : [], area_m2: 0.5, edge_m: 3 }];
  });
  c.focusOn(below("/regions", c.job.document.regions.length - 1, "name"));
}

function regionCard(c, region, i) {
  const at = below("/regions", i);
  const key = "region " + region.id;
  const title = region.name || region.id || `region ${i + 1}`;
  const size = (name, label, hint) => numberField(c, below(at, name), { name, label, hint });
  return card(c, { at, key, title, note: "region", open: false },
    h("div", { class: "fields" }, textField(c, below(at, "name"), { label: "Name" }),
      textField(c, below(at, "id"), { label: "Short name", hint: "by which steps speak of it", onchange: (to) => c.job.reshape((job) => renamePart(job, i, to, "regions")) }),
      size("area_m2", "Measured area", "on all parts together"), size("share_ratio", "Or its share", "0.06 is six hundredths"),
      size("edge_m", "Length of its edge", "to mask; found from the shape for a bay, a band or a strip"),
      selection(c, below(at, "of"), { title: "Lies on", regions: false })),
    more(c, key + " more", "A bay, a band or a strip of the shape", [
      size("from_m", "From station", "in place of area and share"), size("to_m", "To station"),
      size("from_z_m", "From height"), size("to_z_m", "To height"),
      textField(c, below(at, "strip", "along"), { label: "Strip along", hint: "leading_edge, root, top, outline: a line of the shape" }),
      numberField(c, below(at, "strip", "width_m"), { name: "width_m", label: "Width of the strip" })]),
    h("div", { class: "acts" }, act(c, "Remove", `Remove ${title}`, (job) => job.regions.splice(i, 1), () => "/regions+")));
}

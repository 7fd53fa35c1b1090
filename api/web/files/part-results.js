// The areas of the parts.
import { h } from "./dom.js";
import { decimalsFor, figure, fixed } from "./format.js";
import { converted } from "./units.js";
import { table } from "./table.js";
import { working } from "./working.js";
import { capital, sentence } from "./words.js";

/** partResults shows each part with its faces. */
export function partResults(estimate, system) {
  const { areas } = estimate;
  if (areas.length === 0) return null;
  const [, areaUnit] = converted(0, "m²", system);
  const [, lengthUnit] = converted(0, "m", system);
  const decimals = decimalsFor(areas.map((part) => converted(part.area_m2, "m²", system)[0]), 2);
  const area = (value) => fixed(converted(value, "m²", system)[0], decimals);
  const heads = [{ text: "Part" }, { text: "Count", number: true }, { text: "Area", unit: areaUnit, number: true },
    { text: "Openings", unit: areaUnit, number: true }, { text: "Edges", unit: lengthUnit, number: true }, { text: "Good to", number: true }];
  const rows = areas.map((part) => [capital(part.name || part.component), part.count, area(part.area_m2), part.openings_m2 ? area(part.openings_m2) : "–",
    figure(converted(part.edge_m, "m", system)[0]), `± ${figure(part.accuracy_percent)} %`]);
  return h("section", { "aria-labelledby": "parts-result-head" },
    h("h3", { id: "parts-result-head" }, "Parts"),
    table("Areas of all of a kind together, openings taken off", heads, rows),
    areas.map((part) => h("details", { class: "result" },
      h("summary", {}, h("span", { class: "title" }, capital(part.name || part.component)), h("span", { class: "note" }, `${area(part.area_m2)} ${areaUnit}`)),
      h("div", { class: "inside" }, h("p", {}, capital(part.method) + "."),
        h("ul", { class: "materials" }, part.faces.map((face) => h("li", {}, h("span", {}, sentence(face.face)), h("span", { class: "value" }, `${area(face.area_m2)} ${areaUnit}`)))),
        working(part.working, system)))));
}

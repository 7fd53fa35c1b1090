// How a number was found: formula, what stood in it, source.
import { h } from "./dom.js";
import { figure, measure } from "./format.js";
import { sentence } from "./words.js";
import { suffixOf } from "./units.js";

/** working shows a list of findings behind a line that opens. */
export function working(findings, system, title = "Show working") {
  if (findings.length === 0) return null;
  return h("details", { class: "working" }, h("summary", {}, title), h("dl", {}, findings.map((found) => finding(found, system))),
    h("p", { class: "hint" }, "Within formulas all values are SI."));
}

function finding({ quantity, of, value, unit, formula, terms, source }, system) {
  const suffix = suffixOf(quantity);
  const name = sentence(suffix ? quantity.slice(0, -suffix.length - 1) : quantity);
  const stood = Object.entries(terms ?? {}).map(([term, number]) => `${term} = ${figure(number, 5)}`).join(", ");
  return h("div", {},
    h("dt", {}, name, of ? ` (${of})` : "", h("span", { class: "value" }, measure(value, unit, system, 4))),
    h("dd", {}, h("code", {}, formula), stood ? h("span", { class: "terms" }, stood) : null, h("cite", {}, source)));
}

// A table of results: a caption, heads with their units, numbers aligned.
import { freshId, h } from "./dom.js";

/**
 * table makes it, in a frame that scrolls where it is too wide. heads: {text,
 * unit, number}; rows and foot hold texts or elements, one for each head. The
 * first of a row names it.
 */
export function table(caption, heads, rows, foot) {
  const id = freshId("caption");
  const line = (cells) => h("tr", {}, cells.map((cell, i) => h(i === 0 ? "th" : "td", { class: heads[i].number ? "number" : null, scope: i === 0 ? "row" : null }, cell)));
  const head = h("tr", {}, heads.map(({ text, unit, number }) => h(text ? "th" : "td", { scope: text ? "col" : null, class: number ? "number" : null }, text, unit ? [" ", h("span", { class: "unit" }, unit)] : null)));
  return h("div", { class: "scroll", role: "group", tabindex: "0", "aria-labelledby": id },
    h("table", {}, h("caption", { id }, caption), h("thead", {}, head), h("tbody", {}, rows.map(line)), foot ? h("tfoot", {}, line(foot)) : null));
}

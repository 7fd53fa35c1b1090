// Lists the members of an object: name, what it may be, unit, limits, meaning.

import { h } from "./dom.js";
import { kindsOf, words } from "./docs-schema.js";

/** members lists what a schema holds, or what it may be. */
export function members(doc, schema) {
  const union = kindsOf(doc, schema);
  if (union) {
    return h("div", {}, h("p", { class: "hint" }, `One of these kinds, told by ${union.key}:`),
      h("ul", { class: "members" }, Object.entries(schema.discriminator.mapping).map(([kind, ref]) => h("li", {},
        partLink(ref.slice(ref.lastIndexOf("/") + 1), kind), h("div", {}, union.kinds.get(kind).description ?? "")))));
  }
  if (!schema.properties) return h("p", {}, describe(words(schema)));
  const required = new Set(schema.required ?? []);
  return h("ul", { class: "members" }, Object.entries(schema.properties).map(([name, one]) => member(name, one, required.has(name))));
}

function member(name, schema, required) {
  const limits = schema["x-limits"];
  const unit = schema["x-unit"] && !limits ? `in ${schema["x-unit"]}` : "";
  const usual = schema.default !== undefined && schema.default !== false ? `${schema.default} unless given` : "";
  const facts = [limits, unit, usual].filter(Boolean).join("; ");
  return h("li", {},
    h("div", {}, h("code", {}, name), " ", required ? h("span", { class: "must" }, "needed") : null),
    h("div", {}, schema.description ? h("div", {}, schema.description) : null,
      h("div", { class: "kind" }, describe(words(schema)), facts ? "; " + facts : "")));
}

function describe({ text, part }) {
  return part ? [text, " ", partLink(part, part)] : text;
}

function partLink(name, text) {
  return h("a", { href: "#part-" + name }, h("code", {}, text));
}

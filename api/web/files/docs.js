// Reads /openapi.json out for people: routes by tag, their fields, a form to
// try each calculator, and the parts that documents are made of.

import { h, fill } from "./dom.js";
import { members } from "./docs-members.js";
import { resolve, resolver, bodyOf, answerOf } from "./docs-schema.js";
import { tryForm } from "./docs-try.js";

/** anchor is the id of a path's section. */
function anchor(path) {
  return "route" + path.replaceAll(/[^a-z0-9]+/gi, "-");
}

function paragraphs(text) {
  return (text ?? "").split("\n\n").map((one) => h("p", {}, one));
}

/** routesByTag groups [path, item] by the tag of their first operation. */
function routesByTag(doc) {
  return doc.tags.map((tag) => ({
    tag,
    routes: Object.entries(doc.paths).filter(([, item]) => operations(item)[0][1].tags.includes(tag.name)),
  }));
}

function operations(item) {
  return Object.entries(item).filter(([, operation]) => operation.responses);
}

function index(doc) {
  const groups = routesByTag(doc).map(({ tag, routes }) => h("div", {},
    h("h2", {}, tag.name),
    routes.map(([path]) => h("a", { href: "#" + anchor(path) }, path.replace("/v1/calculations/", "").replace("/v1/", "")))));
  return [...groups, h("div", {}, h("h2", {}, "parts"), h("a", { href: "#parts" }, "of jobs and answers"))];
}

function route(doc, path, item) {
  const list = operations(item);
  const first = list[0][1];
  const body = list.map(([, o]) => bodyOf(o)).find(Boolean);
  const answer = answerOf(first);
  const query = (item.get ?? first).parameters ?? [];
  return h("article", { class: "route", id: anchor(path) },
    h("h3", {}, list.map(([method]) => h("span", { class: "verb" }, method.toUpperCase())), h("code", {}, path)),
    h("p", {}, first.summary + "."),
    list.length === 1 && first.description !== first.summary ? paragraphs(first.description) : null,
    item.get && item.post ? tryForm(doc, path, item) : null,
    body && !item.get ? h("details", { open: true }, h("summary", {}, "What goes in"), members(doc, resolve(doc, body))) : null,
    query.length > 0 ? h("details", {}, h("summary", {}, item.post && item.get ? `All ${query.length} parameters; a JSON body has the same fields` : "Parameters"), members(doc, queryAsSchema(query))) : null,
    answer ? h("details", {}, h("summary", {}, "What comes back"), members(doc, resolve(doc, answer))) : null,
    h("p", { class: "hint" }, "Errors: " + errorsOf(list).join(", ") + "."));
}

function errorsOf(list) {
  const codes = new Map();
  for (const [, operation] of list) {
    for (const [code, response] of Object.entries(operation.responses)) {
      if (code >= "400") codes.set(code, `${code} ${response.description.toLowerCase()}`);
    }
  }
  return codes.size === 0 ? ["none of its own"] : [...codes.keys()].sort().map((code) => codes.get(code));
}

/** queryAsSchema lets parameters be listed as the members of an object are. */
function queryAsSchema(query) {
  const schema = { type: "object", properties: {}, required: [] };
  for (const p of query) {
    schema.properties[p.name] = { ...(p.schema ?? p.content["application/json"].schema), description: p.description, "x-limits": undefined };
    if (p.required) schema.required.push(p.name);
  }
  return schema;
}

function parts(doc) {
  return h("section", { class: "sheet parts", id: "parts", "aria-labelledby": "parts-head" },
    h("h2", { id: "parts-head" }, "Parts"),
    h("p", { class: "hint" }, "What documents are made of. The fields above lead here."),
    Object.entries(doc.components.schemas).map(([name, schema]) => h("details", { id: "part-" + name },
      h("summary", {}, h("code", {}, name)), paragraphs(schema.description), members(doc, schema))));
}

/** openTarget opens what a link leads to, since it may be folded away. */
function openTarget() {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (target?.tagName === "DETAILS") target.open = true;
  target?.scrollIntoView();
}

async function start() {
  const response = await fetch("/openapi.json");
  if (!response.ok) throw new Error(`the description answers ${response.status}`);
  const doc = resolver(await response.json());
  fill(document.getElementById("index"), index(doc));
  fill(document.getElementById("about"), paragraphs(doc.info.description));
  const curl = document.getElementById("curl");
  curl.textContent = curl.textContent.replace("http://127.0.0.1:8080", location.origin);
  fill(document.getElementById("routes"),
    routesByTag(doc).map(({ tag, routes }) => h("section", { class: "sheet", "aria-label": tag.name },
      h("h2", {}, tag.name), h("p", { class: "hint" }, tag.description), routes.map(([path, item]) => route(doc, path, item)))),
    parts(doc));
  addEventListener("hashchange", openTarget);
  if (location.hash) openTarget();
}

start().catch((error) => {
  const trouble = document.getElementById("trouble");
  trouble.textContent = `The description cannot be shown: ${error.message}. It is at /openapi.json all the same.`;
  trouble.hidden = false;
});

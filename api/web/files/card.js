// One part or one step: a line that opens to its fields.
import { freshId, h } from "./dom.js";

/** card makes it. options: at, key (remembers whether it is open), title, note, open. */
export function card(c, { at, key, title, note, open }, ...body) {
  const isOpen = c.opened.get(key) ?? open;
  const details = h("details", { class: "card", open: isOpen, "data-card": at, ontoggle: () => c.opened.set(key, details.open) },
    h("summary", {}, h("span", { class: "title" }, title), h("span", { class: "note" }, note), h("span", { class: "faulty", hidden: true })),
    h("div", { class: "inside", "data-at": at }, h("p", { class: "fault", hidden: true, id: freshId("fault") }), body));
  return details;
}

/** more puts what is seldom needed behind a line; nothing where there is none. */
export function more(c, key, title, ...fields) {
  if (fields.flat().length === 0) return null;
  const details = h("details", { class: "more", open: c.opened.get(key) ?? false, ontoggle: () => c.opened.set(key, details.open) },
    h("summary", {}, title), h("div", { class: "fields" }, fields));
  return details;
}

/** act makes a button that changes the form; where says where the focus goes then. */
export function act(c, text, name, change, where, more = {}) {
  return h("button", { type: "button", class: "small", "aria-label": name, ...more, onclick: () => { c.job.reshape(change); c.focusOn(where()); } }, text);
}

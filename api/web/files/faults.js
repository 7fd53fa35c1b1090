// Shows the faults of a job where they are, and in a list.
import { fill, h } from "./dom.js";
import { above, tokens } from "./pointer.js";
import { bothUnits } from "./units.js";
import { label, plural } from "./words.js";

/** mountFaults returns show(faults): at their fields, and in the list, which leads there. */
export function mountFaults(form, listing, units, goTo) {
  let current = [];
  const place = () => {
    clear(form);
    for (const fault of current) mark(form, fault);
  };
  form.addEventListener("drawn", place);
  return (faults) => {
    current = faults.map((fault) => ({ ...fault, detail: bothUnits(fault.detail, units.system) }));
    place();
    listing.hidden = faults.length === 0;
    fill(listing, faults.length === 0 ? [] : [
      h("h3", {}, `${plural(faults.length, "thing")} to mend`),
      h("ul", {}, current.map((fault) => h("li", {}, h("button", { type: "button", class: "link", onclick: () => goTo(fault.pointer) }, placeName(form, fault.pointer)), said(fault)[1])))]);
  };
}

function clear(form) {
  for (const slot of form.querySelectorAll(".fault:not([hidden]), .faulty:not([hidden])")) Object.assign(slot, { hidden: true, textContent: "" });
  for (const input of form.querySelectorAll("[aria-invalid]")) {
    input.removeAttribute("aria-invalid");
    describe(input, (ids) => ids.filter((id) => !id.startsWith("fault-")));
  }
}

/** describe changes the ids of the texts that describe a field. */
function describe(input, change) {
  const ids = change((input.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean));
  if (ids.length > 0) input.setAttribute("aria-describedby", ids.join(" "));
  else input.removeAttribute("aria-describedby");
}

/** said splits what is wrong into the label, where the server begins with the wire name, and the rest. */
function said({ pointer, detail }) {
  const name = tokens(pointer).at(-1);
  return name && /[a-z]/.test(name) && detail.startsWith(name) ? [label(name), detail.slice(name.length)] : ["", " " + detail];
}

/** ownLabel is the label of the very field that a fault is about. */
function ownLabel(around, pointer) {
  return around.dataset.at === pointer ? around.querySelector(":scope > label")?.firstChild.textContent : undefined;
}

/** mark puts a fault at its field, or at the nearest thing around it. */
function mark(form, fault) {
  const around = nearest(form, fault.pointer);
  if (!around) return;
  const slot = around.querySelector(":scope > .fault");
  const [name, rest] = said(fault);
  slot.textContent = `${slot.textContent} ${name && (ownLabel(around, fault.pointer) ?? name)}${rest}`.trim();
  slot.hidden = false;
  const input = around.querySelector(":scope > :is(input, select)");
  if (input) {
    input.setAttribute("aria-invalid", "true");
    describe(input, (ids) => [...new Set([...ids, slot.id])]);
  }
  count(around);
}

/** count says on every closed line above that there is a fault within. */
function count(around) {
  for (let card = around.closest("details"); card; card = card.parentElement.closest("details")) {
    const badge = card.querySelector(":scope > summary > .faulty");
    if (badge) Object.assign(badge, { hidden: false, textContent: "to mend" });
    else card.open = true;
  }
}

function nearest(form, pointer) {
  for (let at = pointer; at !== ""; at = above(at)) {
    const found = form.querySelector(`[data-at="${CSS.escape(at)}"]`);
    if (found?.querySelector(":scope > .fault")) return found;
  }
  return null;
}

function placeName(form, pointer) {
  const around = nearest(form, pointer);
  const label = around?.querySelector(":scope > label, :scope > fieldset > legend")?.firstChild.textContent ?? around?.querySelector("[aria-label]")?.getAttribute("aria-label");
  const card = around?.closest("[data-card]")?.querySelector(".title")?.textContent;
  const hole = around?.closest(".hole")?.querySelector("legend").textContent;
  return [...new Set([card, hole, label])].filter(Boolean).join(": ") || pointer || "The job";
}

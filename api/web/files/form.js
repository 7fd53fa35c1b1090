// The form of the job. It is built anew when there is something more or less to
// show, and left alone while somebody types into it.
import { fill } from "./dom.js";
import { markingForm } from "./marking-form.js";
import { moneyForm, nameForm } from "./money-form.js";
import { partForm } from "./part-form.js";
import { productForm } from "./product-form.js";
import { regionForm } from "./region-form.js";
import { stepForm } from "./step-form.js";

/**
 * mountForm keeps the form in an element. It returns the context that fields
 * share; refreshed maps what rests on the faces of the parts to what renews it.
 */
export function mountForm(root, job, catalogue, units, faces) {
  const context = { job, catalogue, faces, refreshed: new WeakMap(), opened: new Map(), focusOn: (at) => focusOn(root, at), get system() { return units.system; } };
  const draw = () => {
    fill(root, nameForm(context), partForm(context), regionForm(context), markingForm(context), stepForm(context), productForm(context), moneyForm(context));
    root.dispatchEvent(new CustomEvent("drawn"));
  };
  const react = (what) => {
    root.inert = !job.readable;
    root.classList.toggle("unreadable", !job.readable);
    if (what !== "value" && job.readable) draw();
  };
  job.addEventListener("change", (event) => react(event.detail));
  units.addEventListener("change", draw);
  faces.addEventListener("change", () => {
    for (const element of root.querySelectorAll("[data-refreshed]")) context.refreshed.get(element)();
  });
  draw();
  react("value");
  return context;
}

/** focusOn puts the focus on the field, the button or the card of a pointer, opening what hides it. */
function focusOn(root, at) {
  const name = CSS.escape(at);
  const target = root.querySelector(`[name="${name}"]`) ?? root.querySelector(`[data-focus="${name}"]`) ??
    root.querySelector(`[data-card="${name}"] > summary`) ?? root.querySelector(`[data-at="${name}"] :is(input, select, button)`);
  if (!target) return false;
  for (let hiding = target.closest("details"); hiding; hiding = hiding.parentElement.closest("details")) {
    if (target.parentElement !== hiding || target.tagName !== "SUMMARY") hiding.open = true;
  }
  target.focus();
  target.scrollIntoView({ block: "center" });
  return true;
}

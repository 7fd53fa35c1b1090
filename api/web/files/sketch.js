// A drawing of a part, true to scale, beside its sizes. The server draws it;
// where it cannot, nothing is shown.
import { drawing, Refused } from "./api.js";
import { h } from "./dom.js";
import { object } from "./lenient.js";
import { sentence } from "./words.js";

const pause = 300; // ms after the last key
const most = 30; // drawings kept

/** sketch is the place of the drawing of a shape at a pointer. */
export function sketch(at, title, kind, calculator = "area") {
  return h("figure", { class: "sketch", "data-sketch": at, "data-calculator": calculator, hidden: true },
    h("a", { target: "_blank", title: "Open it larger, in a page of its own" },
      h("img", { alt: `Drawing to scale of ${title}, ${sentence(kind ?? "shape").toLowerCase()}, with its dimensions` })));
}

/** mountSketches fills the places within the open cards of a form, and keeps them true to the job. */
export function mountSketches(root, job, units) {
  const drawn = new Map(); // request -> address of a drawing, or "" where there is none
  let timer = 0;
  const places = () => [...root.querySelectorAll("details[open] > .inside > [data-sketch]")];
  const wanted = (place) => JSON.stringify([place.dataset.calculator, units.system, object(job.value(place.dataset.sketch))]);
  const show = () => places().filter((place) => !showKnown(place, drawn.get(wanted(place))));
  const draw = async () => {
    for (const place of show()) await fetchInto(drawn, wanted(place));
    show();
  };
  const later = () => {
    clearTimeout(timer);
    if (show().length > 0) timer = setTimeout(draw, pause);
  };
  job.addEventListener("change", later);
  units.addEventListener("change", later);
  root.addEventListener("drawn", later);
  root.addEventListener("toggle", later, true); // a toggle does not rise
  later();
}

/** showKnown shows a drawing, or hides its place where there is none; false where neither is known yet. */
function showKnown(place, address) {
  if (address === undefined) return false;
  place.hidden = address === "";
  const picture = place.querySelector("img");
  if (address && picture.getAttribute("src") !== address) picture.src = picture.parentElement.href = address;
  return true;
}

async function fetchInto(drawn, request) {
  const [calculator, system, shape] = JSON.parse(request);
  try {
    drawn.set(request, URL.createObjectURL(await drawing(calculator, shape, system)));
  } catch (error) {
    if (error instanceof Refused) drawn.set(request, "");
  }
  for (const [old, address] of drawn) {
    if (drawn.size <= most) break;
    drawn.delete(old);
    URL.revokeObjectURL(address);
  }
}

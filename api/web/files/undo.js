// Brings back the job that was replaced.
import { fill, h } from "./dom.js";

/** mountUndo shows what was replaced, with the way back. after() is called when that was taken. */
export function mountUndo(place, job, after) {
  job.addEventListener("replaced", ({ detail: { was, now } }) => {
    fill(place,
      h("span", {}, h("strong", {}, now), ` stands here in place of ${was}.`),
      h("span", { class: "answers" },
        h("button", { type: "button", class: "small", "data-undo": true, onclick: () => { job.undo(); after(); } }, "Undo"),
        h("button", { type: "button", class: "small plain", "aria-label": "Hide this note", onclick: () => { fill(place); after(); } }, "✕")));
  });
}

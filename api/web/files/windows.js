// Two windows with the page: neither overwrites what the other has kept. The
// one that comes second keeps its job for itself and asks.
import { fill, h } from "./dom.js";

/** mountWindows shows the question while the job kept in this browser is another window's. */
export function mountWindows(place, job) {
  const show = () => {
    place.hidden = !job.contested;
    if (!job.contested) return fill(place);
    if (place.childNodes.length > 0) return;
    fill(place, h("span", {}, h("strong", {}, "Another window has changed the job that this browser keeps."), " Yours is kept for this window only, until you choose. "),
      h("button", { type: "button", class: "small", "data-window": "mine", onclick: () => { job.settle(true); show(); } }, "Keep this one"), " ",
      h("button", { type: "button", class: "small", "data-window": "theirs", onclick: () => { job.settle(false); show(); } }, "Take the other window’s"));
  };
  job.addEventListener("change", show);
  addEventListener("storage", ({ key }) => {
    if (key !== "filmbuild.job") return;
    job.meet();
    show();
  });
  show();
}

// Asks the server how sure the estimate is; it can be stopped.
import { Away, Refused, ranged } from "./api.js";
import { fill, h } from "./dom.js";
import { figure } from "./format.js";

const usual = 10_000;
const offered = [1_000, usual, 100_000];

/**
 * mountRangeRun puts the button, the progress and the way to stop in a place.
 * latest() gives the estimate shown, done(estimate, asked) gets the one with a
 * range.
 */
export function mountRangeRun(place, { latest, done, report }) {
  let under = null;
  const trials = h("select", { "aria-label": "Trials" }, offered.map((count) => h("option", { value: count, selected: count === usual }, `${figure(count, 6)} trials`)));
  const start = h("button", { type: "button", "data-range": "start" }, "How sure?");
  const stop = h("button", { type: "button", class: "small", "data-range": "stop" }, "Stop");
  const passed = h("span", { class: "hint" });
  const running = h("span", { class: "running", hidden: true }, h("progress", { "aria-label": "Trials are run" }), passed, stop);
  fill(place, start, trials, running);
  stop.addEventListener("click", () => under?.abort());
  start.addEventListener("click", async () => {
    const shown = latest();
    if (!shown) return report("There is no estimate yet of which the range could be found.");
    under = new AbortController();
    const end = show(running, start, passed);
    try {
      done(await ranged(shown.asked, trials.value, under.signal), shown.asked);
      report("");
    } catch (error) {
      report(said(error));
    } finally {
      const held = running.contains(document.activeElement);
      end();
      if (held) start.focus();
    }
  });
}

/** show counts the seconds until the function that it returns is called. */
function show(running, start, passed) {
  const begun = performance.now();
  const tell = () => { passed.textContent = `${Math.round((performance.now() - begun) / 1000)} s`; };
  tell();
  running.hidden = false;
  start.disabled = true;
  const ticking = setInterval(tell, 1000);
  return () => {
    clearInterval(ticking);
    running.hidden = true;
    start.disabled = false;
  };
}

function said(error) {
  if (error.name === "AbortError") return "The trials were stopped; the estimate stands as it was.";
  if (error instanceof Away) return "The server does not answer, so the range is not known. Nothing is lost; try again.";
  if (error instanceof Refused) return `The range was refused: ${error.faults.map((fault) => fault.detail).join(" ")}`;
  throw error;
}

// Puts the page together.
import { catalogue, examples } from "./api.js";
import { Estimator } from "./estimator.js";
import { Job } from "./job.js";
import { Units, mountUnits } from "./chosen-units.js";
import { fileName, mountDownloads, save } from "./downloads.js";
import { mountFaults } from "./faults.js";
import { mountForm } from "./form.js";
import { glance } from "./headline.js";
import { PresentFaces } from "./present-faces.js";
import { History, mountHistory } from "./history.js";
import { mountPrint } from "./printing.js";
import { mountRange } from "./range-panel.js";
import { mountRaw } from "./raw.js";
import { mountResults } from "./results.js";
import { mountSketches } from "./sketch.js";
import { mountStart, simplestFirst } from "./start.js";
import { mountUndo } from "./undo.js";
import { mountWindows } from "./windows.js";

const $ = (id) => document.getElementById(id);

const job = new Job();
const units = new Units();
const estimator = new Estimator(job);
const faces = new PresentFaces(estimator);
const restored = job.restore();
const offered = examples();
const known = catalogue();
mountUnits($("units"), units);
if (!restored) {
  const { examples: all } = await patiently(() => offered, examples);
  job.start(structuredClone(simplestFirst(all)[0].job));
}
const history = new History(job);
estimator.now();
await assemble(await patiently(() => known, catalogue), await patiently(() => offered, examples));

/** patiently asks again until the server answers; what was typed waits in this browser. */
async function patiently(first, again) {
  for (let answer = first(); ; answer = again()) {
    try {
      return await answer;
    } catch (error) {
      away(true);
      console.warn(error.message);
      await new Promise((resolve) => setTimeout(resolve, 3000));
    }
  }
}

function away(yes) {
  $("away").hidden = !yes;
}

function report(text) {
  $("report").textContent = text;
}

async function assemble(known, offered) {
  const form = mountForm($("form"), job, known, units, faces);
  mountSketches($("form"), job, units);
  const raw = mountRaw($("job-text"), $("job-text-details"), job);
  const show = mountResults({ block: $("headline"), first: $("results-first"), main: $("results-body"), rest: $("results-rest"), voice: $("voice") });
  const showFaults = mountFaults($("form"), $("faults"), units, (pointer) => form.focusOn(pointer) || raw.open());
  mountDownloads($("downloads"), { job, units, latest: () => estimator.latest, report });
  mountRange($("range"), estimator, report);
  mountHistory(history, $("undo"), $("redo"));
  mountWindows($("windows"), job);
  mountPrint($("results"), $("print"));
  mountUndo($("replaced"), job, () => $("form-head").focus());
  mountStart({ list: $("examples"), file: $("open-file"), paste: $("paste") }, offered.examples, job, {
    saveJob: () => save(job.text, "application/json", fileName(job) + ".job.json"),
    bought, units, toText: () => raw.open({ chosen: true }), started, report,
  });
  if (restored) $("start").open = false;
  follow(show, showFaults);
  $("app").hidden = false;
}

/** started leads to the first size of a job that was just taken up. */
function started() {
  report("");
  $("form-head").focus();
}

/** bought leads to the list of what to buy, once it is there. */
function bought() {
  report("");
  estimator.addEventListener("done", () => $("buy")?.focus(), { once: true });
}

/** follow shows what the estimator tells, from where it stands. */
function follow(show, showFaults) {
  const results = $("results");
  const clear = () => {
    for (const id of ["headline", "results-first", "results-body", "results-rest", "job-name", "glance", "voice"]) $(id).replaceChildren();
  };
  const draw = () => {
    if (!estimator.latest) return clear();
    show(estimator.latest.estimate, units.system);
    performance.mark("first estimate shown");
    $("job-name").textContent = estimator.latest.estimate.job;
    $("glance").textContent = glance(estimator.latest.estimate, units.system);
  };
  const react = ({ what, detail }) => {
    if (what === "busy") return results.setAttribute("aria-busy", "true");
    results.removeAttribute("aria-busy");
    results.dataset.state = what;
    away(what === "away");
    if (what !== "away") showFaults(detail ?? []);
    $("stale").hidden = !estimator.latest;
    if (what === "done" || !estimator.latest) draw();
  };
  for (const what of ["busy", "done", "faulty", "away", "empty"]) estimator.addEventListener(what, () => react(estimator.state));
  units.addEventListener("change", draw);
  job.addEventListener("change", () => { $("unsafe").hidden = job.safe; });
  react(estimator.state);
}

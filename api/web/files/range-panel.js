// The panel "How sure is this?": it keeps the last range until the job changes,
// and says when it is of the job as it was.
import { mountRangeRun } from "./range-run.js";
import { rangeResults } from "./range-results.js";

/** mountRange connects the panel with what the estimator tells. */
export function mountRange(root, estimator, report) {
  const [run, stale, shown] = ["run", "stale", "shown"].map((name) => root.querySelector(`[data-range-${name}]`));
  let asked = null; // the job that the range shown is of
  const draw = (estimate, of) => {
    asked = estimate.range ? of : null;
    stale.hidden = true;
    rangeResults(shown, estimate);
  };
  mountRangeRun(run, { latest: () => estimator.latest, done: draw, report });
  const react = () => {
    const { latest } = estimator;
    root.hidden = !latest;
    if (!latest) return (asked = null);
    if (latest.estimate.range || asked === null) draw(latest.estimate, latest.asked);
    else stale.hidden = asked === latest.asked;
  };
  estimator.addEventListener("done", react);
  estimator.addEventListener("empty", react);
  estimator.job.addEventListener("replaced", () => { asked = null; });
  react();
}

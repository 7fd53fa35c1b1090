// Works the job out whenever it changes: not at every key, and the last answer
// wins.
import { Away, Refused, estimate } from "./api.js";

const pause = 300; // ms after the last key
const patience = 3000; // ms before the server is asked again

/** Estimator tells listeners of "busy", "done", "faulty", "away" and "empty". */
export class Estimator extends EventTarget {
  latest = null; // { text, estimate, asked } of the last good answer for this job
  state = { what: "busy" };
  #timer = 0;
  #under = null;

  constructor(job) {
    super();
    this.job = job;
    job.addEventListener("replaced", () => { this.latest = null; });
    job.addEventListener("change", (event) => this.#later(event.detail === "shape" ? 0 : pause));
  }

  /** now asks at once. */
  now() {
    this.#later(0);
  }

  #later(wait) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#work(), wait);
  }

  async #work() {
    this.#under?.abort();
    const under = (this.#under = new AbortController());
    const asked = this.job.text;
    if (this.job.empty) {
      this.latest = null;
      return this.#tell("empty");
    }
    this.#tell("busy");
    try {
      const text = await estimate(asked, under.signal);
      if (under !== this.#under) return;
      this.latest = { text, asked, estimate: JSON.parse(text) };
      this.#tell("done");
    } catch (error) {
      if (under !== this.#under || error.name === "AbortError") return;
      if (error instanceof Refused) return this.#tell("faulty", error.faults);
      if (!(error instanceof Away)) throw error;
      this.#tell("away");
      this.#later(patience);
    }
  }

  #tell(what, detail) {
    this.state = { what, detail };
    this.dispatchEvent(new CustomEvent(what, { detail }));
  }
}

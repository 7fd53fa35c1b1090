// Every state of the job that was left behind, and the way back and forth. It
// is kept in this browser with the job, so that it outlives a reload.
import { keep, kept } from "./kept.js";

const most = 60; // states kept each way
const largest = 1_500_000; // characters kept in all
const pause = 1500; // ms within which typing counts as one change

/** History tells listeners of "change". */
export class History extends EventTarget {
  #past = [];
  #future = [];
  #now;
  #last = { at: 0, what: "" };
  #moving = false;

  constructor(job) {
    super();
    this.job = job;
    const stored = kept("history");
    if (Array.isArray(stored?.past) && Array.isArray(stored?.future)) [this.#past, this.#future] = [stored.past, stored.future];
    this.#now = job.state;
    job.addEventListener("change", (event) => this.#note(event.detail));
  }

  get canUndo() {
    return this.#past.length > 0;
  }

  get canRedo() {
    return this.#future.length > 0;
  }

  undo() {
    this.#move(this.#past, this.#future);
  }

  redo() {
    this.#move(this.#future, this.#past);
  }

  #move(from, to) {
    if (from.length === 0) return;
    to.push(this.#now);
    this.#now = from.pop();
    this.#moving = true;
    this.job.bring(this.#now);
    this.#moving = false;
    this.#last = { at: 0, what: "" };
    this.#keep();
  }

  #note(what) {
    const state = this.job.state;
    if (this.#moving || state.text === this.#now.text) return;
    const at = performance.now();
    const typing = what !== "shape" && what === this.#last.what && at - this.#last.at < pause;
    if (!typing && this.#now.text !== "") this.#past.push(this.#now);
    this.#future = [];
    this.#now = state;
    this.#last = { at, what };
    this.#keep();
  }

  #keep() {
    this.#past = this.#past.slice(-most);
    const size = () => this.#past.reduce((sum, state) => sum + state.text.length, 0);
    while (this.#past.length > 1 && size() > largest) this.#past.shift();
    keep("history", { past: this.#past, future: this.#future.slice(-most) });
    this.dispatchEvent(new Event("change"));
  }
}

/** mountHistory connects two buttons and the keys; in a text the keys are those of the browser. */
export function mountHistory(history, undo, redo) {
  const show = () => {
    undo.disabled = !history.canUndo;
    redo.disabled = !history.canRedo;
  };
  undo.addEventListener("click", () => history.undo());
  redo.addEventListener("click", () => history.redo());
  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.target.matches("input[type=text], textarea")) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) history.redo();
    else history.undo();
  });
  history.addEventListener("change", show);
  show();
}

// The job as it stands: its text, which is what is sent, and the document that
// the form shows. Both change together; a text that is not a job leaves the
// last document that was one.
import { forget, keep, kept, ofThisWindow } from "./kept.js";
import { read, write } from "./pointer.js";
import { isJob, list } from "./lenient.js";

/**
 * Job tells listeners of "change", with detail "value", "shape" or "text", and
 * of "replaced", with detail {was, now}: what the two jobs are called.
 */
export class Job extends EventTarget {
  text = "";
  document = {};
  builtIn = ""; // the text it was started from, where that is not the user's own
  readable = true; // the text is a job that the form can show
  safe = true; // this browser keeps it
  contested = false; // another window has kept another job
  #stamp = null; // of what was kept or read last

  /** restore takes up the job that was kept; false where there is none. */
  restore() {
    const mine = kept("mine", ofThisWindow);
    const shared = kept("job");
    const stored = mine ?? shared;
    this.contested = mine !== undefined && mine.text !== shared?.text;
    this.#stamp = shared?.stamp ?? null;
    if (typeof stored?.text !== "string" || !isJob(stored.document)) return false;
    Object.assign(this, { document: stored.document, builtIn: stored.builtIn ?? "" });
    this.#take(stored.text);
    this.#tell("shape");
    return true;
  }

  /** own is true when there is something of the user's own to lose. */
  get own() {
    return this.text !== "" && this.text !== this.builtIn;
  }

  /** title is what the job is called. */
  get title() {
    return String(this.document.name || "a job without a name");
  }

  /** empty is true for a job that has nothing to work out yet. */
  get empty() {
    return this.readable && ["components", "steps", "items"].every((name) => list(this.document[name]).length === 0);
  }

  /** start takes a whole new job that this page brought: an example, or the empty one. */
  start(document) {
    this.#replace(() => {
      this.document = document;
      this.builtIn = written(document);
      this.#take(this.builtIn);
    });
  }

  /** retype takes the text as somebody types it, job or not. */
  retype(text) {
    this.#take(text);
    this.#keep();
    this.#tell("text");
  }

  /** pasteOver takes a text that somebody puts in place of the whole job. */
  pasteOver(text) {
    this.#replace(() => this.#take(text), "text");
  }

  /** open takes the text of a file. */
  open(text) {
    this.#replace(() => {
      this.builtIn = "";
      this.#take(text);
      if (this.readable) this.text = written(this.document);
    });
  }

  /** undo brings the job back that was replaced last, and puts this one in its place. */
  undo() {
    const { text, document, builtIn } = this.#former;
    this.#replace(() => {
      Object.assign(this, { document, builtIn });
      this.#take(text);
    });
  }

  /** state is all that brings this job back. */
  get state() {
    return { text: this.text, builtIn: this.builtIn, ...(this.readable ? {} : { document: this.document }) };
  }

  /** bring takes up a job as it once was. */
  bring({ text, builtIn, document }) {
    this.builtIn = builtIn;
    if (document) this.document = structuredClone(document);
    this.#take(text);
    this.#keep();
    this.#tell("shape");
  }

  /** meet looks at what another window has kept: it is taken up where this job is nobody's own. */
  meet() {
    const stored = kept("job");
    if (!stored || stored.stamp === this.#stamp || stored.text === this.text) return;
    this.contested = true;
    if (!this.own) this.settle(false);
  }

  /** settle ends the contest: mine keeps this job in place of the other window's, else that one is taken up. */
  settle(mine) {
    const stored = kept("job");
    this.contested = false;
    this.#stamp = stored?.stamp ?? null;
    forget("mine", ofThisWindow);
    if (mine || !isJob(stored?.document)) return this.#keep();
    this.bring(stored);
  }

  value(pointer) {
    return read(this.document, pointer);
  }

  /** set changes one value; undefined takes it out. */
  set(pointer, value) {
    write(this.document, pointer, value);
    this.#written("value");
  }

  /** reshape changes what there is: parts, steps, kinds, rows. */
  reshape(change) {
    change(this.document);
    this.#written("shape");
  }

  #former = null;

  #replace(take, what = "shape") {
    const was = this.title;
    const former = this.text === "" ? null : { text: this.text, document: structuredClone(this.document), builtIn: this.builtIn };
    take();
    this.#former = former;
    this.#keep();
    this.#tell(what);
    if (former) this.dispatchEvent(new CustomEvent("replaced", { detail: { was, now: this.title } }));
  }

  #written(what) {
    this.text = written(this.document);
    this.readable = true;
    this.#keep();
    this.#tell(what);
  }

  #take(text) {
    this.text = text;
    this.readable = false;
    try {
      const document = JSON.parse(text);
      if (isJob(document)) Object.assign(this, { document, readable: true });
    } catch {
      // the server says where the text stops being JSON
    }
  }

  #keep() {
    const state = { text: this.text, document: this.document, builtIn: this.builtIn };
    const shared = kept("job");
    if (shared?.stamp && shared.stamp !== this.#stamp && shared.text !== this.text) this.contested = true;
    if (this.contested) return (this.safe = keep("mine", state, ofThisWindow));
    const stamp = `${Date.now()}-${Math.random()}`;
    this.safe = keep("job", { ...state, stamp });
    if (this.safe) this.#stamp = stamp;
  }

  #tell(what) {
    this.dispatchEvent(new CustomEvent("change", { detail: what }));
  }
}

function written(document) {
  return JSON.stringify(document, null, 2);
}

// The job as it stands: its text, which is what is sent, and the document that
// the form shows. Both change together; a text that is not a job leaves the
// last document that was one.
import { keep, kept } from "./kept.js";
import { read, write } from "./pointer.js";
import { isJob } from "./lenient.js";

/** Job tells listeners of "change", with detail "value", "shape" or "text". */
export class Job extends EventTarget {
  text = "";
  document = {};
  origin = ""; // the text it was started from
  readable = true; // the text is a job that the form can show
  safe = true; // this browser keeps it

  /** restore takes up the job that was kept; false where there is none. */
  restore() {
    const stored = kept("job");
    if (typeof stored?.text !== "string" || !isJob(stored.document)) return false;
    Object.assign(this, { document: stored.document, origin: stored.origin ?? "" });
    this.#take(stored.text);
    this.#tell("shape");
    return true;
  }

  /** changed is true when there is something of the user's own to lose. */
  get changed() {
    return this.text !== "" && this.text !== this.origin;
  }

  /** start takes a whole new job. */
  start(document) {
    this.document = document;
    this.origin = written(document);
    this.#take(this.origin);
    this.#keep();
    this.#tell("shape");
  }

  /** retype takes the text as somebody types it, job or not. */
  retype(text) {
    this.#take(text);
    this.#keep();
    this.#tell("text");
  }

  /** open takes the text of a file, and counts it as unchanged. */
  open(text) {
    this.#take(text);
    if (this.readable) this.text = written(this.document);
    this.origin = this.text;
    this.#keep();
    this.#tell("shape");
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
    this.safe = keep("job", { text: this.text, document: this.document, origin: this.origin });
  }

  #tell(what) {
    this.dispatchEvent(new CustomEvent("change", { detail: what }));
  }
}

function written(document) {
  return JSON.stringify(document, null, 2);
}

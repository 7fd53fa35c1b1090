// The faces that the parts of the job have at present, as they were measured
// last. A shape has fewer than its kind: a panel painted on one side has no back.

/** PresentFaces tells listeners of "change", when a part gains or loses a face. */
export class PresentFaces extends EventTarget {
  #faces = new Map();

  constructor(estimator) {
    super();
    estimator.addEventListener("done", () => this.#take(estimator.latest.estimate.areas));
  }

  /** of lists the faces of a part; undefined before it was measured. */
  of(part) {
    return this.#faces.get(part);
  }

  #take(areas) {
    const before = written(this.#faces);
    this.#faces = new Map(areas.map(({ component, faces }) => [component, faces.map(({ face }) => face)]));
    if (written(this.#faces) !== before) this.dispatchEvent(new Event("change"));
  }
}

function written(faces) {
  return JSON.stringify([...faces]);
}

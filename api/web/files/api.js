// Talks to the server this page came from.

/** Away says that no answer came. */
export class Away extends Error {}

/** Refused carries a problem document (RFC 9457). */
export class Refused extends Error {
  constructor(problem) {
    super(problem.detail);
    this.problem = problem;
  }

  /** faults lists { pointer, code, detail }, at least one. */
  get faults() {
    return this.problem.errors?.length ? this.problem.errors : [{ pointer: "", code: "refused", detail: this.problem.detail }];
  }
}

async function ask(path, options) {
  let answer;
  try {
    answer = await fetch(path, options);
  } catch (error) {
    if (error.name === "AbortError") throw error;
    throw new Away("the server does not answer");
  }
  if (answer.ok) return answer;
  const problem = await answer.json().catch(() => ({ detail: `the server answered with status ${answer.status}` }));
  throw new Refused(problem);
}

/** catalogue fetches everything that the form offers, and the examples. */
export async function catalogue() {
  const [shapes, products, methods, markings] = await Promise.all(["shapes", "products", "methods", "markings"].map(list));
  return { shapes: shapes.shapes, products: products.products.map((entry) => entry.product), methods: methods.methods, markings: markings.markings };
}

/** examples fetches the built-in jobs. */
export function examples() {
  return list("examples");
}

async function list(name) {
  return (await ask("/v1/" + name, { headers: { Accept: "application/json" } })).json();
}

/** estimate works a job out; it answers the text, so that a download is what was sent. */
export async function estimate(text, signal) {
  return (await post("/v1/estimates", text, "application/json", signal)).text();
}

/** form works a job out and answers it in another form, as a file. */
export async function form(text, query, accept, signal) {
  return (await post("/v1/estimates" + query, text, accept, signal)).blob();
}

/** ranged works a job out with the range of its totals. */
export async function ranged(text, trials, signal) {
  return (await post("/v1/estimates?trials=" + trials, text, "application/json", signal)).json();
}

/** sheet draws a marking of a job at true scale. */
export async function sheet(text, query) {
  return (await post("/v1/sheets" + query, text, "image/svg+xml")).blob();
}

/** drawing draws what a calculator of outlines is given, "area" or "marking", true to scale. */
export async function drawing(calculator, shape, system) {
  return (await post(`/v1/calculations/${calculator}?units=` + system, JSON.stringify(shape), "image/svg+xml")).blob();
}

function post(path, body, accept, signal) {
  return ask(path, { method: "POST", body, signal, headers: { "Content-Type": "application/json", Accept: accept } });
}

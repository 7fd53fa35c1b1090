// Reads a job that may be half-written: what should be a list or an object is
// one, whatever the text says.

export function list(value) {
  return Array.isArray(value) ? value : [];
}

export function object(value) {
  return value !== null && typeof value === "object" && !Array.isArray(value) ? value : {};
}

/** isJob is false for a document that no form can show. */
export function isJob(value) {
  return value !== null && typeof value === "object" && !Array.isArray(value) &&
    ["components", "steps", "items", "products", "regions", "markings"].every((name) => everyIsObject(value[name]));
}

function everyIsObject(value) {
  return value === undefined || (Array.isArray(value) && value.every((entry) => entry !== null && typeof entry === "object" && !Array.isArray(entry)));
}

/** isRange is true for {"low", "likely", "high"}. */
export function isRange(value) {
  return value !== null && typeof value === "object" && !Array.isArray(value) && ("low" in value || "likely" in value || "high" in value);
}

// JSON pointers (RFC 6901): where a value stands in the job.

/** tokens splits "/components/0/shape" into its names. */
export function tokens(pointer) {
  return pointer === "" ? [] : pointer.slice(1).split("/").map((token) => token.replaceAll("~1", "/").replaceAll("~0", "~"));
}

/** below adds names to a pointer. */
export function below(pointer, ...names) {
  return pointer + names.map((name) => "/" + String(name).replaceAll("~", "~0").replaceAll("/", "~1")).join("");
}

/** above is the pointer of what holds a value; that of the whole is "". */
export function above(pointer) {
  return pointer.slice(0, Math.max(pointer.lastIndexOf("/"), 0));
}

/** read returns the value at a pointer, or undefined. */
export function read(root, pointer) {
  let value = root;
  for (const token of tokens(pointer)) {
    if (value === null || typeof value !== "object" || !Object.hasOwn(value, token)) return undefined;
    value = value[token];
  }
  return value;
}

/**
 * write puts a value at a pointer, making objects on the way; undefined takes
 * the value out.
 */
export function write(root, pointer, value) {
  const path = tokens(pointer);
  const last = path.pop();
  let holder = root;
  for (const token of path) {
    if (!Object.hasOwn(holder, token) || holder[token] === null || typeof holder[token] !== "object") {
      if (value === undefined) return;
      holder[token] = {};
    }
    holder = holder[token];
  }
  if (value !== undefined) holder[last] = value;
  else if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else delete holder[last];
}

// Keeps things in this browser until they are replaced. A browser that refuses
// to keep anything (private windows may) is worked with as well as can be.

/** keep stores a value; false says that the browser would not. */
export function keep(name, value) {
  try {
    localStorage.setItem("filmbuild." + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** kept returns what was stored, or undefined. */
export function kept(name) {
  try {
    const text = localStorage.getItem("filmbuild." + name);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

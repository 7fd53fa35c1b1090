// Keeps things in this browser until they are replaced. A browser that refuses
// to keep anything (private windows may) is worked with as well as can be.

/** keep stores a value; false says that the browser would not. */
export function keep(name, value, where = () => localStorage) {
  try {
    where().setItem("filmbuild." + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** kept returns what was stored, or undefined. */
export function kept(name, where = () => localStorage) {
  try {
    const text = where().getItem("filmbuild." + name);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** forget lets go of what was stored. */
export function forget(name, where = () => localStorage) {
  try {
    where().removeItem("filmbuild." + name);
  } catch {
    // nothing was kept there
  }
}

/** ofThisWindow is where only this window looks; it outlives a reload. */
export function ofThisWindow() {
  return sessionStorage;
}

// Keeps the names by which steps, regions and markings speak of a part true
// when it is renamed, added or taken away.
import { list } from "./lenient.js";

function renamed(name, from, to) {
  const [part, face] = String(name).split("/");
  if (part !== from) return name;
  return face === undefined ? to : `${to}/${face}`;
}

/** renamePart changes the id of a part, or of a region, and of all that speaks of it. */
export function renamePart(job, index, to, kind = "components") {
  const from = job[kind][index].id;
  job[kind][index].id = to;
  if (!from || list(job[kind]).some((part, i) => i !== index && part.id === from)) return;
  for (const step of list(job.steps)) if (Array.isArray(step.on)) step.on = step.on.map((name) => renamed(name, from, to));
  for (const region of list(job.regions)) if (Array.isArray(region.of)) region.of = region.of.map((name) => renamed(name, from, to));
  for (const marking of list(job.markings)) if (typeof marking.on === "string") marking.on = renamed(marking.on, from, to);
}

/** treatLike takes a part into every step that another part is in whole. */
export function treatLike(job, id, other) {
  for (const step of list(job.steps)) {
    if (Array.isArray(step.on) && step.on.includes(other) && !step.on.includes(id)) step.on.push(id);
  }
}

/** forgetPart takes a part out of the steps that also treat others. */
export function forgetPart(job, id) {
  for (const step of list(job.steps)) {
    if (!Array.isArray(step.on)) continue;
    const left = step.on.filter((name) => name !== id && !String(name).startsWith(id + "/"));
    if (left.length > 0) step.on = left;
  }
}

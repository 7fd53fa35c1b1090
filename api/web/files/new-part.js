// Makes parts that work at once, to be changed.
import { list } from "./lenient.js";

/** freeId finds an id that the list does not have yet: "panel", "panel-2". */
export function freeId(entries, stem) {
  const taken = new Set(list(entries).map((entry) => entry.id));
  let id = stem;
  for (let n = 2; taken.has(id); n++) id = `${stem}-${n}`;
  return id;
}

/** newPart makes a part of a kind from the sizes that the server gives as an example. */
export function newPart(job, shape) {
  const id = freeId(job.components, shape.kind.replaceAll("_", "-"));
  return { id, shape: { kind: shape.kind, ...structuredClone(shape.example) }, substrate: "aluminium" };
}

/** copyPart makes another part like one. */
export function copyPart(job, part) {
  const copy = structuredClone(part);
  copy.id = freeId(job.components, String(part.id ?? "part").replace(/-\d+$/, ""));
  if (part.name) copy.name = part.name + ", another";
  return copy;
}

// What usually comes after the steps that are there, so that the next one is a
// press of a button.
import { list } from "./lenient.js";
import { everyProduct } from "./step-fields.js";
import { task } from "./words.js";

const after = {
  "": ["wash", "blast", "strip", "sand"], strip: ["wash", "sand"], blast: ["wash", "pretreat", "protect"], sand: ["wash"],
  wash: ["coat", "pretreat"], pretreat: ["coat", "protect"], protect: ["wash", "coat"], mask: ["coat"], mark: ["mark"],
};

/** usualNext lists {operation, product, text} by what the last step was. */
export function usualNext(c) {
  const last = list(c.job.document.steps).at(-1);
  if (last?.operation === "coat") return afterPaint(c, last.product);
  return (after[last?.operation ?? ""] ?? []).filter((name) => name !== "mark" || hasMarkings(c)).map((operation) => ({ operation, text: task(operation) }));
}

/** afterPaint offers white after a primer, and after white another colour and the markings. */
function afterPaint(c, product) {
  const paints = everyProduct(c).filter((entry) => entry.kind === "paint");
  const top = paints.filter((entry) => entry.role === "topcoat");
  const white = top.find((entry) => entry.colour === "white");
  const primed = paints.find((entry) => entry.id === product)?.role === "primer";
  const used = new Set(list(c.job.document.steps).map((step) => step.product));
  const family = top.find((entry) => entry.id === product)?.family ?? white?.family;
  const colours = primed ? [white] : top.filter((entry) => entry.family === family && !used.has(entry.id)).slice(0, 3);
  const offers = colours.filter(Boolean).map((entry) => ({ operation: "coat", product: entry.id, text: `Paint: ${entry.colour ?? entry.name ?? entry.id}` }));
  return [...offers, ...(!primed && hasMarkings(c) ? [{ operation: "mark", text: task("mark") }] : [])];
}

function hasMarkings(c) {
  return list(c.job.document.markings).length > 0;
}

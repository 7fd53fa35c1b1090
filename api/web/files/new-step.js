// Makes a step with the usual settings, chosen by what goes before it.
import { list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { everyProduct } from "./step-fields.js";

/** newStep makes a step of an operation on all parts of the job. */
export function newStep(c, operation) {
  const job = c.job.document;
  const step = { id: freeId(job.steps, operation), operation };
  if (operation === "mark") return { ...step, markings: list(job.markings).map((marking) => marking.id), coats: 2, method: "brush" };
  step.on = list(job.components).map((part) => part.id).filter(Boolean);
  return { ...step, ...usual(c, operation) };
}

const uses = { strip: "stripper", wash: "cleaner", protect: "protective", pretreat: "treatment" };

function usual(c, operation) {
  const first = (fits) => everyProduct(c).find(fits)?.id;
  switch (operation) {
    case "blast": // a common hand nozzle at a pressure kind to thin skins (common practice)
      return { media: first((entry) => entry.kind === "media"), nozzle_bore_mm: 6.35, pressure_kpa: 240, recovered: true };
    case "sand":
      return { product: everyProduct(c).filter((entry) => entry.kind === "disc").sort((a, b) => (b.grit ?? 0) - (a.grit ?? 0))[0]?.id, scuff: true };
    case "coat":
      return { product: nextPaint(c), coats: 1, method: c.catalogue.methods.find((method) => method.id === "hvlp")?.id, loss_percent: 10 };
  }
  return uses[operation] ? { product: first((entry) => entry.kind === "liquid" && entry.use === uses[operation]) } : {};
}

/** nextPaint is a primer where nothing was painted yet, and then a topcoat. */
function nextPaint(c) {
  const paints = everyProduct(c).filter((entry) => entry.kind === "paint");
  const used = new Set(list(c.job.document.steps).filter((step) => step.operation === "coat").map((step) => step.product));
  const primed = paints.some((paint) => used.has(paint.id) && paint.role === "primer");
  return (paints.find((paint) => paint.role === (primed ? "topcoat" : "primer")) ?? paints[0])?.id;
}

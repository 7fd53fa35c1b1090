// Words for the names on the wire.
import { suffixOf } from "./units.js";

const own = new Map(Object.entries({
  a_m: "Semi-axis a", b_m: "Semi-axis b", c_m: "Semi-axis c",
  sweep_le_deg: "Sweep of the leading edge", haack_c: "Haack C",
  x_m: "Across, x", y_m: "Up, y", z_m: "Height of centre", skin_mm: "Skin thickness",
  existing_film_um: "Paint on it now", existing_film_density_kg_l: "Density of that paint",
  extra_area_percent: "Extra area", dry_film_um: "Dry film, each coat", dry_film_kg: "Dry film",
  voc_g_l: "VOC", voc_kg: "Solvent into the air", hvlp: "HVLP", naca: "NACA four-digit", setup_h: "Set up and clear away",
  loss_percent: "Mixed but never sprayed", rate_m2_h: "Area done in an hour", i: "I-section",
}));

const ofFields = { sides: "Sides painted", ends: "Ends painted" };

/** label makes a label of a wire name: "root_chord_m" -> "Root chord". */
export function label(name) {
  if (own.has(name) || ofFields[name]) return own.get(name) ?? ofFields[name];
  const suffix = suffixOf(name);
  return sentence(suffix ? name.slice(0, -suffix.length - 1) : name.replace(/_ratio$/, ""));
}

/** sentence makes plain words of a code: "clad_aluminium" -> "Clad aluminium". */
export function sentence(code) {
  if (own.has(code)) return own.get(code);
  return capital(code.replaceAll("_", " ").replaceAll("-", " "));
}

/** capital starts a text with a capital and leaves the rest as it is. */
export function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const tasks = {
  blast: "Blast", sand: "Sand", strip: "Strip with chemical", wash: "Wash or wipe", protect: "Protect for a while",
  pretreat: "Pretreat", mask: "Mask", coat: "Paint", mark: "Paint markings",
};

/** task names an operation. */
export function task(operation) {
  return tasks[operation] ?? sentence(operation ?? "step");
}

/** operations in the order of a repaint. */
export const operations = ["strip", "blast", "sand", "wash", "pretreat", "protect", "mask", "coat", "mark"];

/** plural writes "1 coat" or "2 coats". */
export function plural(count, one, many = one + "s") {
  return `${count} ${count === 1 ? one : many}`;
}

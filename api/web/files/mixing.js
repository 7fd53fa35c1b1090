// How to mix each paint of several parts, and how much at a time.
import { h } from "./dom.js";
import { cup, figure, measure } from "./format.js";
import { plural } from "./words.js";

/** mixing shows it for every step that has something to mix. */
export function mixing(estimate, system) {
  const names = new Map(estimate.order.map((line) => [line.product, line.name]));
  const mixes = estimate.steps.flatMap((step) => (step.mixing ?? []).map((mix) => ({ step, mix })));
  if (mixes.length === 0) return null;
  return h("section", { "aria-labelledby": "mix-head" },
    h("h3", { id: "mix-head" }, "How to mix"),
    h("ul", { class: "mixes" }, mixes.map(({ step, mix }) => h("li", {},
      h("p", {}, h("strong", {}, names.get(mix.product) ?? mix.product), ` for ${step.name || step.id}`),
      h("p", { class: "recipe" }, ingredients(mix).map(([litres, what], i) => [i > 0 ? " + " : "", h("span", {}, `${cup(litres, system)} ${what}`)])),
      hint([ratio(mix), batch(mix, system)].filter(Boolean))))));
}

/** ingredients lists what goes together; a paint of one part goes as it comes, or thinned. */
function ingredients({ parts, paint_l: paint, thinner_l: thinner }) {
  const own = parts.length > 0 ? parts.map((part) => [part.litres, part.part]) : [[paint, thinner > 0 ? "paint" : "as it comes"]];
  return thinner > 0 ? [...own, [thinner, "thinner"]] : own;
}

function hint(texts) {
  return texts.length === 0 ? null : h("p", { class: "hint" }, texts.join("; ") + ".");
}

function ratio(mix) {
  if (mix.parts.length < 2) return "";
  return `By volume ${mix.parts.map((part) => figure(part.ratio)).join(" : ")}, ${mix.parts.map((part) => part.part).join(" to ")}`;
}

function batch(mix, system) {
  if (!mix.batch_l) return "";
  const within = mix.use_within_h ?? mix.pot_life_h;
  const life = within ? `, used within ${figure(within)} h at ${measure(mix.pot_life_at_c, "°C", system)}` : "";
  return `mix at most ${cup(mix.batch_l, system)} at a time (${plural(mix.batches, "batch", "batches")} in all)${life}`;
}

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
      h("p", { class: "recipe" }, mix.parts.map((part, i) => [i > 0 ? " + " : "", h("span", {}, `${cup(part.litres, system)} ${part.part}`)]),
        mix.thinner_l > 0 ? [" + ", h("span", {}, `${cup(mix.thinner_l, system)} thinner`)] : null),
      h("p", { class: "hint" }, [ratio(mix), batch(mix, system)].filter(Boolean).join("; ") + ".")))));
}

function ratio(mix) {
  if (mix.parts.length < 2) return "";
  return `By volume ${mix.parts.map((part) => figure(part.ratio)).join(" : ")}, ${mix.parts.map((part) => part.part).join(" to ")}`;
}

function batch(mix, system) {
  if (!mix.batch_l) return "";
  const life = mix.pot_life_h ? `, used within ${figure(mix.pot_life_h)} h at ${measure(mix.pot_life_at_c, "°C", system)}` : "";
  return `mix at most ${cup(mix.batch_l, system)} at a time (${plural(mix.batches, "batch", "batches")} in all)${life}`;
}

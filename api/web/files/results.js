// The estimate as it is read: the headline, dangers, what to buy, and the rest.
import { assumptions } from "./assumptions.js";
import { better, tests } from "./better.js";
import { budget } from "./budget.js";
import { cautions, dangers, warnings } from "./cautions.js";
import { fill, h } from "./dom.js";
import { headline, spoken } from "./headline.js";
import { mixing } from "./mixing.js";
import { order } from "./order.js";
import { partResults } from "./part-results.js";
import { stepResults } from "./step-results.js";
import { wearing } from "./wearing.js";

/**
 * mountResults returns show(estimate, system). first holds what must be seen
 * before anything else, main what to buy and to do, rest where it all comes
 * from. What somebody had opened stays open when the figures change.
 */
export function mountResults({ block, first, main, rest, voice }) {
  return (estimate, system) => {
    fill(block, headline(estimate, system));
    fill(first, warnings(estimate), dangers(estimate));
    keepOpen(main, () => fill(main, order(estimate, system), wearing(estimate), tests(estimate), mixing(estimate, system), cautions(estimate)));
    keepOpen(rest, () => fill(rest, budget(estimate, system), stepResults(estimate, system), partResults(estimate, system), better(estimate), assumptions(estimate, system),
      h("p", { class: "hint" }, `Catalogue ${estimate.catalogue_version}, engine ${estimate.engine_version}. An estimate, not a specification: the data sheets of your products and local rules come first.`)));
    const words = spoken(estimate, system);
    if (voice.textContent !== words) voice.textContent = words;
  };
}

function keepOpen(body, draw) {
  const name = (details) => (details.closest("[data-product]")?.dataset.product ?? details.parentElement.closest("details")?.querySelector(".title")?.textContent) + "|" + (details.dataset.step ?? details.querySelector("summary").textContent);
  const open = new Set([...body.querySelectorAll("details[open]")].map(name));
  draw();
  for (const details of body.querySelectorAll("details")) details.open = open.has(name(details));
}

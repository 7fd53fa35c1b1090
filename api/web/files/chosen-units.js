// The units that people chose.
import { keep, kept } from "./kept.js";

/** Units tells listeners of "change". */
export class Units extends EventTarget {
  system = kept("units") === "us" ? "us" : "si";

  choose(system) {
    this.system = system;
    keep("units", system);
    this.dispatchEvent(new Event("change"));
  }
}

/** mountUnits connects the two choices. */
export function mountUnits(root, units) {
  for (const choice of root.querySelectorAll("input")) {
    choice.checked = choice.value === units.system;
    choice.addEventListener("change", () => units.choose(choice.value));
  }
}

// A bar of two parts beside figures that say the same: cash whole, in kind
// hatched, so that they differ without colour.
import { svg } from "./dom.js";

const wide = 120, high = 12;

/** bar draws what is cash and what is in kind of the most that a line has. */
export function bar(cash, inKind, most) {
  const scale = most > 0 ? wide / most : 0;
  const [first, second] = [Math.max(cash, 0) * scale, Math.max(inKind, 0) * scale];
  const strokes = [];
  for (let x = first; x < first + second; x += 4) strokes.push(`M${x.toFixed(1)} ${high}L${Math.min(x + 4, first + second).toFixed(1)} 0`);
  return svg("svg", { class: "bar", viewBox: `0 0 ${wide} ${high}`, width: wide, height: high, "aria-hidden": "true" },
    first > 0 ? svg("rect", { class: "cash", width: first, height: high }) : null,
    second > 0 ? [svg("rect", { class: "in-kind", x: first, y: 0.5, width: Math.max(second - 0.5, 0.5), height: high - 1 }), svg("path", { class: "hatch", d: strokes.join("") })] : null);
}

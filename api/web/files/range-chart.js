// Draws how likely each total is: bars for how often, a line for how often it
// is enough.
import { svg } from "./dom.js";
import { grouped } from "./format.js";

const wide = 640, high = 250, left = 44, right = 14, top = 22, bottom = 42;
const marked = ["p10", "p50", "p80", "p90"];

/** rangeChart draws the range of the total; the figures in it also stand in the table beside. */
export function rangeChart({ histogram, s_curve: curve, total, single_figure: single }, currency) {
  const low = Math.min(histogram[0].from, Number(total.p10)), far = Math.max(histogram.at(-1).to, Number(total.p90));
  const x = (value) => left + (wide - left - right) * (far > low ? Math.min(Math.max((value - low) / (far - low), 0), 1) : 0.5);
  const y = (share) => high - bottom - (high - top - bottom) * share;
  const most = Math.max(...histogram.map((bin) => bin.share_ratio));
  const bars = histogram.map((bin) => svg("rect", { class: "bin", x: x(bin.from), width: Math.max(x(bin.to) - x(bin.from) - 1, 0.5), y: y(0.85 * bin.share_ratio / most), height: y(0) - y(0.85 * bin.share_ratio / most) }));
  const line = curve.filter((point) => point.value >= low && point.value <= far).map((point) => `${x(point.value).toFixed(1)},${y(point.share_ratio).toFixed(1)}`);
  const label = `Likelihood of the total in ${currency}: ${marked.map((name) => `${name.toUpperCase()} ${grouped(total[name])}`).join(", ")}.`;
  return svg("svg", { class: "chart", viewBox: `0 0 ${wide} ${high}`, role: "img", "aria-label": label },
    [0, 0.5, 1].map((share) => [svg("line", { class: "grid", x1: left, x2: wide - right, y1: y(share), y2: y(share) }), svg("text", { x: left - 6, y: y(share) + 4, "text-anchor": "end" }, `${share * 100} %`)]),
    bars, svg("polyline", { class: "curve", points: line.join(" ") }),
    marked.filter((name) => name !== "p90").map((name) => mark(x(Number(total[name])), y, name.toUpperCase())),
    svg("line", { class: "single", x1: x(Number(single)), x2: x(Number(single)), y1: y(0), y2: y(0) + 7 }),
    ends(low, far, x, currency));
}

function mark(at, y, name) {
  return [svg("line", { class: "mark", x1: at, x2: at, y1: y(1), y2: y(0) }), svg("text", { x: at, y: y(1) - 7, "text-anchor": "middle" }, name)];
}

function ends(low, far, x, currency) {
  const text = (value, anchor) => svg("text", { x: x(value), y: high - bottom + 22, "text-anchor": anchor }, grouped(value.toFixed(0)));
  return [text(low, "start"), text((low + far) / 2, "middle"), text(far, "end"), svg("text", { x: wide - right, y: high - 4, "text-anchor": "end" }, `total, ${currency}`)];
}

// Where a marking stands: distances from two edges, two tapes, or a station.
import { choiceField, numberField, textField } from "./field.js";
import { object } from "./lenient.js";
import { below } from "./pointer.js";
import { rows } from "./rows.js";

const ways = {
  offsets: { text: "from two edges", fresh: { from_a_m: 1, from_b_m: 1 } },
  tapes: { text: "by tapes from known points", fresh: [{ x_m: 0, y_m: 0, distance_m: 1 }, { x_m: 1, y_m: 0, distance_m: 1 }] },
  station: { text: "by station and water line", fresh: { station_m: 1, water_line_m: 0, face: "left" } },
};

/** placeFields shows the place of a marking, one of the three ways or none. */
export function placeFields(c, markingAt, marking) {
  const at = below(markingAt, "place");
  const place = object(marking.place);
  const way = Object.keys(ways).find((name) => place[name] !== undefined);
  const choose = choiceField(c, at + "/", {
    label: "Measured", empty: "not said", value: way, wide: true, values: Object.entries(ways).map(([value, { text }]) => ({ value, text })),
    onchange: (chosen) => { c.job.reshape(() => c.job.set(at, chosen && changed(place, chosen))); c.focusOn(at + "/"); },
  });
  return way ? [choose, fieldsOfWay(c, at, way), anchored(c, at, way)] : [choose];
}

function changed(place, chosen) {
  const kept = Object.fromEntries(Object.entries(place).filter(([name]) => !(name in ways) && name !== "side"));
  return { [chosen]: structuredClone(ways[chosen].fresh), ...kept, ...(chosen === "tapes" ? { side: "left" } : {}) };
}

function fieldsOfWay(c, at, way) {
  const number = (name, label, hint) => numberField(c, below(at, way, name), { name, label, hint });
  const text = (name, label, hint) => textField(c, below(at, way, name), { label, hint });
  switch (way) {
    case "offsets": return [number("from_a_m", "From edge A", "square to it"), number("from_b_m", "From edge B", "square to it"), text("edge_a", "Edge A is"), text("edge_b", "Edge B is")];
    case "station": return [number("station_m", "Station", "aft of the datum"), number("water_line_m", "Water line"), number("butt_line_m", "Butt line"),
      choiceField(c, below(at, way, "face"), { label: "Face", values: ["left", "right", "upper", "lower"].map((value) => ({ value })) }), text("datum", "Datum", "from where stations count")];
  }
  return [rows(c, below(at, "tapes"), [{ key: "name", label: "Known point", text: true }, { key: "x_m", name: "x_m", label: "Along, x" }, { key: "y_m", name: "y_m", label: "Up, y" }, { key: "distance_m", name: "distance_m", label: "Taped" }],
    { title: "Tapes", one: "tape", fresh: () => ({ x_m: 0, y_m: 0, distance_m: 1 }) }),
    choiceField(c, below(at, "side"), { label: "Side", hint: "of the way from the first point to the second", values: [{ value: "left" }, { value: "right" }] })];
}

function anchored(c, at) {
  return [numberField(c, below(at, "rotation_deg"), { name: "rotation_deg", label: "Turned", empty: "0" }), numberField(c, below(at, "tape_error_mm"), { name: "tape_error_mm", label: "A tape may be off by", empty: "3 mm" })];
}

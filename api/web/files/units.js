// Shows SI numbers in the units people chose, and reads what they type.
import { unitsBySuffix, unitsByPrinted } from "./unit-table.js";

/** suffixOf finds the unit suffix of a wire name: "strip_rate_m2_h" -> "m2_h". */
export function suffixOf(name) {
  const parts = name.split("_");
  for (let from = 1; from < parts.length; from++) {
    const tail = parts.slice(from).join("_");
    if (unitsBySuffix.has(tail)) return tail;
  }
  return "";
}

/** unitName is the unit a suffix is shown in. */
export function unitName(suffix, system) {
  const unit = unitsBySuffix.get(suffix);
  return unit ? unit[system] : "";
}

/** converted turns an SI value with its printed unit into [value, unit]. */
export function converted(value, unit, system) {
  const known = unitsByPrinted.get(unit);
  return known && system === "us" ? [value / known.factor + known.offset, known.us] : [value, unit];
}

/** fieldText is what a field shows of a value of the job. */
export function fieldText(value, suffix, system) {
  if (value === undefined || value === null) return "";
  const unit = unitsBySuffix.get(suffix);
  if (typeof value === "number" && unit && system === "us") {
    return String(Number((value / unit.factor + unit.offset).toPrecision(6)));
  }
  if (typeof value === "string" && unit && system === "us" && value.endsWith(" " + unit.us)) {
    const number = value.slice(0, -unit.us.length - 1);
    return bare.test(number) ? number : value;
  }
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

const bare = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
const hasUnit = /[\p{L}'"′″°%]/u;

/**
 * fieldValue is what the job holds for what was typed: undefined for nothing,
 * a number for a bare one in SI, text with its unit for the rest, for the API
 * to read. A fraction without a unit ("4 1/2") gets the field's.
 */
export function fieldValue(typed, suffix, system) {
  const text = typed.trim();
  if (text === "") return undefined;
  const unit = unitsBySuffix.get(suffix);
  const shown = unit ? unit[system] : "";
  if (bare.test(text)) {
    const foreign = unit && unit.us !== unit.si && system === "us";
    const number = Number(text);
    return foreign ? `${text} ${shown}` : Number.isFinite(number) ? number : text;
  }
  return unit && !hasUnit.test(text) && !text.includes(",") ? `${text} ${shown}` : text;
}

/** limitsText shortens "at least 0.001 m and at most 500 m" and converts it. */
export function limitsText(limits, system) {
  if (!limits) return "";
  const shown = limits.replace(/(-?\d[\d.e+-]*)( [^\s]+)?(?= and |$)/g, (whole, number, unit = "") => {
    const known = unitsByPrinted.get(unit.trim());
    if (!known || system !== "us") return whole;
    return `${Number((Number(number) / known.factor + known.offset).toPrecision(3))} ${known.us}`;
  });
  return shown.replace(/^at least (\S+)(?: \S+)? and at most /, "$1 to ");
}

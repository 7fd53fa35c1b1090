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
  if (typeof value === "number" && unit && system === "us" && unit.us !== unit.si) {
    return String(rounded(value / unit.factor + unit.offset, unit.us));
  }
  if (typeof value === "string" && unit && system === "us" && value.endsWith(" " + unit.us)) {
    const number = value.slice(0, -unit.us.length - 1);
    return bare.test(number) ? number : value;
  }
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

/** rounded leaves the digits that a person would measure: 0.656 ft, 124.7 ft, 70 °F. */
function rounded(value, unit) {
  if (value === 0 || unit === "°F") return Math.round(value);
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  return exponent < -1 ? Number(value.toPrecision(3)) : Number(value.toFixed(Math.min(Math.max(3 - exponent, 0), 3)));
}

const bare = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
const hasUnit = /[\p{L}'"′″‘’“”°%]/u;

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

/** numberOrRange reads "25 / 30 / 45" as low, likely and high, and all else as fieldValue does. */
export function numberOrRange(typed, suffix, system) {
  const three = typed.match(/^([^/]+)\/([^/]+)\/([^/]+)$/) ?? typed.match(/^(.+) \/ (.+) \/ (.+)$/);
  if (!three) return fieldValue(typed, suffix, system);
  const [low, likely, high] = three.slice(1).map((part) => fieldValue(part, suffix, system));
  return { low, likely, high };
}

/** bothUnits sets the US value beside every SI value in a sentence. */
export function bothUnits(text, system) {
  if (system !== "us") return text;
  return text.replace(/(-?\d[\d.]*(?:e[+-]?\d+)?) ([^\s,;:)]+)(?=[\s,;:)]|$)/g, (whole, number, printed) => {
    const unit = printed.replace(/\.$/, "");
    const known = unitsByPrinted.get(unit);
    if (!known || known.us === known.si) return whole;
    const [shown, name] = limit(Number(number) / known.factor + known.offset, known.us);
    return `${number} ${unit} (${Number(shown.toPrecision(3))} ${name})${printed.slice(unit.length)}`;
  });
}

/**
 * limitsText shortens "at least 0.001 m and at most 500 m" and converts it, in
 * US units to three digits, less than a tenth of a foot to inches.
 */
export function limitsText(limits, system) {
  if (!limits) return "";
  const shown = limits.replace(/(-?\d[\d.e+-]*)( [^\s]+)?(?= and |$)/g, (whole, number, unit = "") => {
    const known = unitsByPrinted.get(unit.trim());
    if (!known || system !== "us") return whole;
    const [shown, name] = limit(Number(number) / known.factor + known.offset, known.us);
    return `${Number(shown.toPrecision(3))} ${name}`;
  });
  return shown.replace(/^at least (\S+)( \S+)? and at most (\S+)( \S+)?$/, (_, low, lowUnit, high, highUnit) =>
    `${low}${lowUnit === highUnit || low === "0" ? "" : lowUnit} to ${high}${highUnit ?? ""}`);
}

function limit(value, unit) {
  return unit === "ft" && value !== 0 && Math.abs(value) < 0.1 ? [value * 12, "in"] : [value, unit];
}

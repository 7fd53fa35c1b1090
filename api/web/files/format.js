// Writes numbers for people. Money is decimal text and stays text: it is never
// turned into a binary number.
import { converted } from "./units.js";

/** figure writes a number with a few significant digits and grouped thousands. */
export function figure(value, digits = 3) {
  if (!Number.isFinite(value)) return "–";
  if (value === 0) return "0";
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(Math.max(digits - 1 - exponent, 0), 9);
  const text = value.toFixed(decimals);
  return grouped(text.includes(".") ? text.replace(/\.?0+$/, "") : text);
}

/** fixed writes a number with that many decimals. */
export function fixed(value, decimals) {
  return Number.isFinite(value) ? grouped(value.toFixed(decimals)) : "–";
}

/** decimalsFor is how many decimals a column needs so that its greatest number has three digits. */
export function decimalsFor(values, most = 3) {
  const greatest = Math.max(0, ...values.map(Math.abs));
  if (greatest === 0) return 0;
  return Math.min(Math.max(2 - Math.floor(Math.log10(greatest)), 0), most);
}

/** money writes "1800.00" as "1,800.00". */
export function money(amount) {
  return grouped(String(amount));
}

/** grouped sets the thousands of a decimal text apart. */
export function grouped(text) {
  const [whole, fraction] = String(text).split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ",");
  return fraction === undefined ? spaced : `${spaced}.${fraction}`;
}

/** measure writes a value that carries its printed unit, in the units chosen. */
export function measure(value, unit, system, digits = 3) {
  const [shown, name] = converted(value, unit, system);
  if (name === "°F") return `${fixed(shown, 0)} °F`;
  return name ? `${figure(shown, digits)} ${name}` : figure(shown, digits);
}

const cups = { si: [["L", 1], ["mL", 0.001]], us: [["gal", 3.785411784], ["qt", 0.946352946], ["fl oz", 0.0295735295625]] };

/** cup writes litres in the unit that a person would pour: mL, L, fl oz, qt or gal. */
export function cup(litres, system, digits = 3) {
  const fits = cups[system].find(([, size]) => litres >= size * 0.995) ?? cups[system].at(-1);
  return `${figure(litres / fits[1], digits)} ${fits[0]}`;
}

/** amount writes a quantity to buy or to use: litres as they are poured. */
export function amount(value, unit, system, digits = 3) {
  if (unit === "L") return cup(value, system, digits);
  return unit === "pcs" ? figure(value, digits) : measure(value, unit, system, digits);
}

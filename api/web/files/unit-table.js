// Units of the wire and how the two systems show them. A name's suffix says its
// unit: dry_film_um is in µm.
//
//   shown in US units = SI value / factor + offset
//
// Factors are exact: the yard and pound agreement of 1959 (foot 0.3048 m, pound
// 0.45359237 kg), the US gallon of 231 in³ (3.785411784 L), both in NIST SP 811
// Appendix B and NIST Handbook 44 Appendix C; the rest follow from them.

const foot = 0.3048;
const gallon = 3.785411784;
const pound = 0.45359237;
const poundForcePerInch2 = (pound * 9.80665) / (0.0254 * 0.0254) / 1000; // kPa; g_n of NIST SP 811

const row = (suffix, si, us = si, factor = 1, offset = 0) => [suffix, { suffix, si, us, factor, offset }];

export const unitsBySuffix = new Map([
  row("m", "m", "ft", foot),
  row("mm", "mm", "in", 25.4),
  row("um", "µm", "mil", 25.4),
  row("m2", "m²", "ft²", foot * foot),
  row("m3", "m³", "ft³", foot ** 3),
  row("l", "L", "gal", gallon),
  row("kg", "kg", "lb", pound),
  row("g", "g", "oz", (pound * 1000) / 16),
  row("h", "h"),
  row("min", "min"),
  row("c", "°C", "°F", 5 / 9, 32),
  row("kpa", "kPa", "psi", poundForcePerInch2),
  row("kw", "kW", "hp", (550 * foot * pound * 9.80665) / 1000), // 550 ft·lbf/s
  row("deg", "°"),
  row("percent", "%"),
  row("m3_min", "m³/min", "cfm", foot ** 3),
  row("m2_l", "m²/L", "ft²/gal", (foot * foot) / gallon),
  row("l_m2", "L/m²", "gal/ft²", gallon / (foot * foot)),
  row("m2_h", "m²/h", "ft²/h", foot * foot),
  row("m_h", "m/h", "ft/h", foot),
  row("m_s", "m/s", "mph", 0.44704), // 5280 ft/h
  row("l_h", "L/h", "gal/h", gallon),
  row("kg_h", "kg/h", "lb/h", pound),
  row("kg_m2", "kg/m²", "lb/ft²", pound / (foot * foot)),
  row("kg_m3", "kg/m³", "lb/ft³", pound / foot ** 3),
  row("kg_l", "kg/L", "lb/gal", pound / gallon),
  row("g_l", "g/L", "lb/gal", (pound * 1000) / gallon),
]);

export const unitsByPrinted = new Map([...unitsBySuffix.values()].reverse().map((unit) => [unit.si, unit]));

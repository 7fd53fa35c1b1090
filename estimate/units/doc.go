// Package units reads numbers that people write with a unit and prints numbers
// in the units that people choose.
//
// On the wire a number is SI and its unit is the suffix of its name: dry_film_um,
// span_m, pressure_kpa (package quantity lists the suffixes). The same number may
// be given as text with a unit of its own, "0.8 mil", "12 ft 10 1/2 in", "35 psi";
// the suffix says what it becomes.
//
// # Accuracy
//
// A text is converted in exact rational arithmetic and rounded once: Parse and
// ParseBare return the float64 nearest to the value that the text means. The one
// inexact factor is that of the radian, 180/π to 19 digits.
//
// # Grammar
//
//	text     = [sign] quantity [["," | "-"] quantity]
//	quantity = number [unit]
//	number   = decimal | fraction | integer fraction | integer "-" fraction
//	decimal  = digits and a point, thousands commas, an exponent
//	fraction = integer "/" integer, or one character such as ½
//	unit     = spelling | spelling "/" spelling | spelling "per" spelling
//
// Two quantities go together only as ft and in, lb and oz, h and min, and the
// sign belongs to their sum. A gallon is the US one and a ton the short one unless
// the text says "imp gal" or "tonne"; an oz is a mass, a "fl oz" a volume. A
// temperature is a point on its scale, so "5 °F" is -15 °C; differences have the
// suffix [TemperatureDifference].
//
// Unit factors are in units.csv with their sources, spellings in spellings.csv,
// the suffixes and the units printed for people in wire.csv.
package units

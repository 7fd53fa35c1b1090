// Package climate says whether the air and the surface let paint be applied,
// and how long a mixed two-pack paint can be used.
//
// Standing assumptions:
//   - Relative humidity is over water, below 0 °C too, as weather services give it.
//   - Below 0 °C water comes out of the air as frost, so the frost point over ice
//     is compared with the surface there.
//   - The rules are those of general specifications. A product's data sheet and
//     the job's own specification may ask for more, and both come first.
//
// Temperatures are in °C, humidity is a fraction in the functions and a
// percentage in DewPoint, pressures are in hPa, times in hours.
package climate

// Package voc finds the volatile organic compounds of a mixed coating in the
// measure that limits are written in: grams per litre of coating less water and
// exempt compounds, as applied.
//
// Standing assumptions:
//   - Volumes add up when parts are mixed.
//   - Water and exempt compounds are neither organic emissions nor part of the
//     litre: adding either leaves the regulated figure where it was.
//   - Limits come from the place where the paint is used; the figure here is no
//     proof of compliance, which rests on the test method the rule names.
//
// Volumes are in L, masses in g, VOC in g/L; shares are fractions in the
// functions and percentages in Mixture.
package voc

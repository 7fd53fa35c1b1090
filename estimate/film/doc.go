// Package film turns a wanted dry film into paint: spreading rates, wet film,
// litres, kilograms and what is lost on the way.
//
// Standing assumptions:
//   - Volume is kept: what is dry on the surface is the volume solids of what
//     was put there. Solids lost are lost as paint of the same solids.
//   - Every loss is a share of what goes into it, so each divides by
//     (1 − loss); none multiplies by (1 + loss). 40 % lost costs 1/0.6 = 1.667
//     times as much paint, not 1.4 times.
//   - Thinner is counted per volume of unthinned paint. It thickens the wet film
//     and never changes the paint that is needed.
//   - A blast profile is filled once, by the first coat, and that filling passes
//     through the same solids and the same losses as the film above it. It is
//     not the correction that is subtracted from a gauge reading on a profile.
//
// Lengths of film are in µm, areas in m², volumes in L, densities in kg/L;
// shares (solids, efficiency, loss, thinner) are fractions in the functions and
// percentages in Coating.
package film

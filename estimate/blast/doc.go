// Package blast works out what a blast nozzle takes and leaves: air, a
// compressor, hours, media thrown and used up, and waste.
//
// Standing assumptions:
//   - Air is an ideal gas at rest at 20 °C before the nozzle; the nozzle is an
//     orifice whose discharge coefficient gathers all losses. Free air is counted
//     at the ambient pressure and 20 °C.
//   - Gauge pressure is that at the nozzle, not at the compressor: the hose takes
//     its share first.
//   - Recovered media work as a steady mix that is topped up: each pass loses the
//     same share, so the media used up are thrown · breakdown and a grain lasts
//     1/breakdown passes on average. A charge that is never topped up is another
//     model, with other numbers.
//   - Flow of media and rate of stripping are those of one nozzle.
//
// Pressures are gauge kPa unless called absolute, bores mm, air m³/min of free
// air, masses kg. How a blast treats the people and the skin in front of it is
// not here: pressures, media and protection are matters for the part's own
// procedure and the local rules.
package blast

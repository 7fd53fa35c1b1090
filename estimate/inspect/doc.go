// Package inspect counts the readings of dry film thickness that SSPC-PA 2 asks
// for.
//
// Standing assumptions:
//   - The standard's metric areas are used: one inspected area for each 10 m² up
//     to 30 m², three up to 100 m², and one more for each further 100 m² or part
//     of it. The text that was read for this counts in square feet (under 300 ft²
//     every 100 ft², to 1000 ft² three); the metric figures and the rule beyond
//     100 m² are from memory. Square feet can ask for one area more, which is said.
//   - An area is 5 spots and a spot is the mean of 3 readings.
//
// The standard itself, its current edition and the job's specification decide.
package inspect

// Package formula reads the formulas that filmbuild shows beside its figures,
// and works them out, so that the formula a person sees is the formula that is
// run: by the tests, by the ranges and by the cells of the workbook.
//
// A formula is one of three kinds.
//
//   - An expression in the symbols of its terms: A·(n·t + p·q)/(1000·VS).
//   - "sum of …": the sum of all its terms; the words say what they are.
//   - "by …": words for a value that a procedure finds (a quadrature, an
//     arrangement of outlines, a cover by packs). It cannot be worked out here.
//
// Expressions know numbers, symbols, + − · * / ^, brackets, √x, ⌈x⌉, ⌊x⌋, π, the
// functions of Functions and if(a < b, x, y); 2π and r² as people write them. A
// symbol is a letter of any script, followed by letters, digits, _ and ′.
package formula

// Package workbook writes an estimate as an Open XML workbook whose formulas are
// alive: every figure is worked out by the formula that its working shows, from
// the cells of the sheet Inputs, and the cheapest packs are chosen anew. The
// values stored beside the formulas are those of the estimate.
//
// Texts are written as texts, never as formulas. Numbers are SI; money is
// rounded by ROUND in the formulas, as the engine rounds it.
package workbook

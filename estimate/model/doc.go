// Package model holds an estimate as a graph: which figure follows from which,
// by which formula. It works the graph out for other inputs than those of the
// estimate, many sets at a time (Program), and tells every node to whoever
// writes the graph down in another form, such as the cells of a workbook.
//
// A node is an input, or a working whose formula package formula can read, or a
// table: a figure that goes up in steps with another, such as the cost of whole
// packs with the need. Nodes are named by quantity.Node.
package model

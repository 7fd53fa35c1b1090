// Package chain follows one piece of surface through the steps of a job and
// says where a step is missing between two others: bare aluminium primed without
// treatment, a protective that was not washed off, a topcoat on bare metal.
//
// A piece is a face, or the part of a face that a region names. The package
// knows no areas, no products and no money: what it sees of a step is an Act.
// Rules and their reasons are data (rules.csv), each with its source and how
// sure that source is.
//
// Standing assumptions:
//   - Steps are done in the order of the job.
//   - A piece whose component gives no existing film may be bare or painted;
//     nothing is said about what lies under it until a step bares it.
package chain

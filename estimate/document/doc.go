// Package document writes an estimate for paper, as PDF: the report for the
// meeting and the funder, and the job sheets for the hangar, one page to a step.
//
// It prints what the estimate says and computes nothing but layout. The same
// estimate and options give the same bytes: the date is the caller's.
package document

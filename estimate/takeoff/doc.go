// Package takeoff turns tables that people fill in (CSV, or the sheets of a
// workbook) into a job document, and a job document into such tables.
//
// A table is one list of the job: components, steps, products, items and so on;
// a row is one element, a column one field. Fields that lie deeper have dotted
// names (shape.span_m), and lists inside an element have tables of their own
// whose first column names the element (stations, openings, packs). The head
// says the unit, "span [m]"; a cell may have its own, "12 ft 10 1/2 in". What
// stands for a whole list or a range is JSON text. What no column holds goes
// into the column rest, as a JSON object.
//
// The columns follow from the structs of the job, so that a new field is a new
// column. The strict reader of job documents judges the meaning; its faults are
// led back from JSON pointers to the cells. Order and case of heads, blank rows
// and a byte order mark do not matter; unknown heads do.
package takeoff

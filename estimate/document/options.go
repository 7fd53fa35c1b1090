package document

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"filmbuild/estimate/units"
)

// Options is what the caller chooses.
type Options struct {
	Date   string       // printed in the head, as 2026-11-25; may be empty
	Paper  string       // a4 or letter; a4 where empty
	System units.System // SI or US customary
}

// Papers lists the sizes of paper.
func Papers() []string { return []string{"a4", "letter"} }

// Check returns what is wrong with the options, each with its field.
func (o Options) Check(report func(field, detail string)) {
	if o.Paper != "" && !slices.Contains(Papers(), o.Paper) {
		report("paper", fmt.Sprintf("paper is %q; give %s", o.Paper, strings.Join(Papers(), " or ")))
	}
	if o.Date != "" {
		if _, err := time.Parse(time.DateOnly, o.Date); err != nil {
			report("date", fmt.Sprintf("date is %q; give it as year-month-day, such as 2026-11-25", o.Date))
		}
	}
}

// created is the date that the file carries: the caller's, or the first day of
// the calendar of computers where there is none.
func (o Options) created() time.Time {
	date, err := time.Parse(time.DateOnly, o.Date)
	if err != nil {
		return time.Unix(0, 0).UTC()
	}
	return date
}

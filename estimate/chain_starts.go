package estimate

import "filmbuild/estimate/stamp"

// startH is when a step starts, in hours of the calendar; nil where the job does
// not say.
func startH(text string) *float64 {
	hours, dated, err := stamp.Hours(text)
	if err != nil || !dated {
		return nil
	}
	return &hours
}

// starts notes a start that is no date.
func (c *checker) starts(text, at string) {
	if text != "" && startH(text) == nil {
		c.faults.Addf(at+"/starts", "wrong_type", "starts is %q; write date and time as 2026-05-02T08:00, or the date alone", clip(text))
	}
}

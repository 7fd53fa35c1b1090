package calendar

// Week says which days of the week are free, Monday first.
type Week [7]bool

// Weekdays are the names of the days, Monday first.
func Weekdays() []string {
	return []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}
}

// Calendar is the working days of a place. Its free days leave at least one day
// of the week to work.
type Calendar struct {
	free     Week
	holidays map[Date]bool
}

// New returns a calendar; false where every day of the week is free.
func New(free Week, holidays []Date) (Calendar, bool) {
	c := Calendar{free: free, holidays: make(map[Date]bool, len(holidays))}
	for _, d := range holidays {
		c.holidays[d] = true
	}
	return c, free != Week{true, true, true, true, true, true, true}
}

// Works reports whether a day is one for work.
func (c Calendar) Works(d Date) bool { return !c.free[d.Weekday()] && !c.holidays[d] }

// After is the working day that lies n working days after a date, or before it
// for a negative n; the date itself is not counted. For n = 0 it is the date, or
// the working day before it.
//
// Source: the spreadsheet function WORKDAY; checked against planning S18.
func (c Calendar) After(d Date, n int) Date {
	step := Date(1)
	if n <= 0 {
		step = -1
	}
	for n == 0 && !c.Works(d) {
		d--
	}
	for n != 0 {
		if d += step; c.Works(d) {
			n -= int(step)
		}
	}
	return d
}

// Between counts the working days from one date to another, both included; 0
// where the second lies before the first.
//
// Source: the spreadsheet function NETWORKDAYS; checked against planning S19 and
// S20.
func (c Calendar) Between(from, to Date) int {
	count := 0
	for d := from; d <= to; d++ {
		if c.Works(d) {
			count++
		}
	}
	return count
}

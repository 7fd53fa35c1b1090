// Package calendar reckons with dates and working days. It knows no clock: every
// date comes from the caller. Dates are of the Gregorian calendar, which ISO 8601
// carries backwards too, from year 1 to 9999.
package calendar

import "fmt"

// Date is a day, counted from 1970-01-01. The zero value is that day.
type Date int

// Parse reads a date of the form 2026-05-31 (ISO 8601, extended form). The second
// value is false for any other text and for a day that no calendar has.
func Parse(text string) (Date, bool) {
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return 0, false
	}
	year, month, day := digits(text[:4]), digits(text[5:7]), digits(text[8:])
	if year < 1 || month < 1 || month > 12 || day < 1 {
		return 0, false
	}
	d := of(year, month, day)
	return d, d.String() == text // the 31st of April comes out as another day
}

// digits reads a text of decimal digits; -1 where it holds anything else.
func digits(text string) int {
	number := 0
	for _, r := range text {
		if r < '0' || r > '9' {
			return -1
		}
		number = 10*number + int(r-'0')
	}
	return number
}

// of counts the days to a date. Years run from March, so that the leap day is the
// last of its year: a month m after March has begun after ⌊(153·m + 2)/5⌋ days.
//
// Source: identity, the rule of the Gregorian calendar.
func of(year, month, day int) Date {
	if month <= 2 {
		year--
	}
	return Date(365*year + year/4 - year/100 + year/400 + (153*((month+9)%12)+2)/5 + day - 1 - daysTo1970)
}

// daysTo1970 is the days from 0000-03-01 to 1970-01-01.
const daysTo1970 = 719468

// String writes the date as 2026-05-31.
func (d Date) String() string {
	days := int(d) + daysTo1970
	era := days / 146097 // days of 400 years
	rest := days % 146097
	years := (rest - rest/1460 + rest/36524 - rest/146096) / 365
	rest -= 365*years + years/4 - years/100
	m := (5*rest + 2) / 153
	month, year := m+3, 400*era+years
	if month > 12 {
		month, year = month-12, year+1
	}
	return fmt.Sprintf("%04d-%02d-%02d", year, month, rest-(153*m+2)/5+1)
}

// Weekday is 0 for Monday to 6 for Sunday.
func (d Date) Weekday() int {
	return ((int(d)+3)%7 + 7) % 7 // 1970-01-01 was a Thursday
}

// Package stamp reads times as people write them: the hours of a weather record
// and the starts of steps. It knows no clock and no time zone; local clocks are
// taken to run on through the seasons.
package stamp

import (
	"fmt"
	"strings"
)

// Hours reads a date, a time of day or both: 2026-05-02T08:30, 2026-05-02 08:30,
// 2026-05-02, 08:30. It returns hours since the start of 1 January 1970, or, of
// a time of day alone, since midnight. dated says whether there was a date.
// Dates are of the Gregorian calendar, years 1 to 9999; 24:00 is the end of a day.
func Hours(text string) (hours float64, dated bool, err error) {
	bad := fmt.Errorf("%q is no time; write 08:30, or 2026-05-02T08:30", clip(text))
	date, clock, both := strings.Cut(strings.Replace(strings.TrimSpace(text), " ", "T", 1), "T")
	if !both && strings.Contains(date, ":") {
		date, clock = "", date
	}
	if date != "" {
		days, ok := dayNumber(date)
		if !ok {
			return 0, false, bad
		}
		hours, dated = float64(days)*24, true
	}
	if clock == "" {
		if both || !dated {
			return 0, false, bad
		}
		return hours, dated, nil
	}
	of, ok := timeOfDay(clock)
	if !ok {
		return 0, false, bad
	}
	return hours + of, dated, nil
}

// timeOfDay reads 8:30, 08:30 or 08:30:00.
func timeOfDay(text string) (float64, bool) {
	parts := strings.Split(text, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return 0, false
	}
	var of [3]int
	for i, part := range parts {
		number, ok := digits(part, 2)
		if !ok || (i > 0 && (number > 59 || len(part) != 2)) {
			return 0, false
		}
		of[i] = number
	}
	if of[0] > 24 || (of[0] == 24 && of[1]+of[2] > 0) {
		return 0, false
	}
	return float64(of[0]) + float64(of[1])/60 + float64(of[2])/3600, true
}

// dayNumber is the number of days from 1 January 1970 to a date YYYY-MM-DD.
//
// Source: identity, the days of a year counted from March, with a leap day every
// fourth year but three in four centuries (Gregorian calendar).
func dayNumber(text string) (int, bool) {
	parts := strings.Split(text, "-")
	if len(parts) != 3 || len(parts[0]) != 4 || len(parts[1]) != 2 || len(parts[2]) != 2 {
		return 0, false
	}
	year, okYear := digits(parts[0], 4)
	month, okMonth := digits(parts[1], 2)
	day, okDay := digits(parts[2], 2)
	if !okYear || !okMonth || !okDay || year < 1 || month < 1 || month > 12 || day < 1 || day > monthDays(year, month) {
		return 0, false
	}
	if month < 3 {
		year, month = year-1, month+12
	}
	const toMarch1970 = 719469 // days of this count up to 1 January 1970
	return 365*year + year/4 - year/100 + year/400 + (153*(month-3)+2)/5 + day - toMarch1970, true
}

func monthDays(year, month int) int {
	switch {
	case month == 2 && (year%4 != 0 || (year%100 == 0 && year%400 != 0)):
		return 28
	case month == 2:
		return 29
	case month == 4 || month == 6 || month == 9 || month == 11:
		return 30
	}
	return 31
}

// digits reads a number of at most so many digits and nothing else.
func digits(text string, most int) (int, bool) {
	if text == "" || len(text) > most {
		return 0, false
	}
	number := 0
	for _, c := range []byte(text) {
		if c < '0' || c > '9' {
			return 0, false
		}
		number = number*10 + int(c-'0')
	}
	return number, true
}

func clip(text string) string {
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	return text
}

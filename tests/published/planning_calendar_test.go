package published

import (
	"testing"

	"filmbuild/estimate/calendar"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func day(t *testing.T, text string) calendar.Date {
	t.Helper()
	d, ok := calendar.Parse(text)
	require.True(t, ok, text)
	return d
}

func weekends(t *testing.T, free string, holidays ...string) calendar.Calendar {
	t.Helper()
	var week calendar.Week
	for i, r := range free {
		week[i] = r == '1'
	}
	var dates []calendar.Date
	for _, h := range holidays {
		dates = append(dates, day(t, h))
	}
	c, ok := calendar.New(week, dates)
	require.True(t, ok)
	return c
}

// S18: WORKDAY of a spreadsheet, 151 working days on, without and with three
// holidays (the vendor's documented example C, run in a spreadsheet, mark A).
func TestS18WorkingDaysOn(t *testing.T) {
	assert.Equal(t, "2009-04-30", weekends(t, "0000011").After(day(t, "2008-10-01"), 151).String())
	assert.Equal(t, "2009-05-05", weekends(t, "0000011", "2008-11-26", "2008-12-04", "2009-01-21").After(day(t, "2008-10-01"), 151).String())
}

// S19: NETWORKDAYS, without and with a holiday (as S18, mark A).
func TestS19WorkingDaysBetween(t *testing.T) {
	assert.Equal(t, 110, weekends(t, "0000011").Between(day(t, "2012-10-01"), day(t, "2013-03-01")))
	assert.Equal(t, 109, weekends(t, "0000011", "2012-11-22").Between(day(t, "2012-10-01"), day(t, "2013-03-01")))
}

// S20: volunteers who come at weekends only, NETWORKDAYS.INTL with "1111100" (run
// in a spreadsheet, mark D).
func TestS20WeekendVolunteers(t *testing.T) {
	assert.Equal(t, 10, weekends(t, "1111100").Between(day(t, "2026-05-01"), day(t, "2026-05-31")))
}

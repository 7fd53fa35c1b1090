package calendar

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The standard library's calendar is the oracle, over every day of nine centuries.
func TestDatesAgreeWithTheStandardLibrary(t *testing.T) {
	day := time.Date(1580, 1, 1, 0, 0, 0, 0, time.UTC)
	for day.Year() < 2480 {
		text := day.Format(time.DateOnly)
		d, ok := Parse(text)
		require.True(t, ok, text)
		require.Equal(t, day.Unix(), int64(d)*86400, text)
		require.Equal(t, text, d.String())
		require.Equal(t, (int(day.Weekday())+6)%7, d.Weekday(), text)
		day = day.AddDate(0, 0, 1)
	}
}

func TestParseRefusesWhatIsNoDay(t *testing.T) {
	for _, text := range []string{"", "2026", "2026-13-01", "2026-02-29", "2026-04-31", "2026-00-10", "2026-01-00", "0000-01-01", "26-01-01", "2026/01/01", "2026-1-01", "2026-01-01T00", "20a6-01-01", "+026-01-01"} {
		_, ok := Parse(text)
		assert.False(t, ok, text)
	}
	for _, text := range []string{"2024-02-29", "2000-02-29", "0001-01-01", "9999-12-31"} {
		_, ok := Parse(text)
		assert.True(t, ok, text)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"2026-05-31", "2026-02-30", "", "----------", "１２３４-01-01"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		_, ok := Parse(text)
		_, err := time.Parse(time.DateOnly, text)
		require.Equal(t, err == nil && text[:4] != "0000", ok, text) // the library has a year 0
	})
}

// Going n working days on and counting them gives n again (identity).
func TestCountingWhatWasGone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var free Week
		for i := range free {
			free[i] = i != 2 && rapid.Bool().Draw(t, "free")
		}
		from := Date(rapid.IntRange(-20000, 40000).Draw(t, "from"))
		var holidays []Date
		for range rapid.IntRange(0, 5).Draw(t, "holidays") {
			holidays = append(holidays, from+Date(rapid.IntRange(-60, 60).Draw(t, "holiday")))
		}
		c, ok := New(free, holidays)
		require.True(t, ok)
		n := rapid.IntRange(1, 60).Draw(t, "n")
		on := c.After(from, n)
		require.True(t, c.Works(on))
		require.Equal(t, n, c.Between(from+1, on))
		back := c.After(from, -n)
		require.True(t, c.Works(back))
		require.Equal(t, n, c.Between(back, from-1))
	})
	_, ok := New(Week{true, true, true, true, true, true, true}, nil)
	assert.False(t, ok, "somebody must work some day")
}

package stamp

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Against the standard library's calendar.
func TestEveryMinuteAgreesWithTheStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := time.Unix(60*rapid.Int64Range(-62135596800/60, 253402300740/60).Draw(t, "minutes"), 0).UTC() // years 1 to 9999
		for _, form := range []string{"2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02T15:04:05"} {
			hours, dated, err := Hours(at.Format(form))
			require.NoError(t, err)
			assert.True(t, dated)
			assert.InDelta(t, float64(at.Unix())/3600, hours, 1e-6)
		}
		hours, dated, err := Hours(at.Format("15:04"))
		require.NoError(t, err)
		assert.False(t, dated)
		assert.InDelta(t, float64(at.Hour())+float64(at.Minute())/60, hours, 1e-12)
	})
}

func TestWhatIsNoTime(t *testing.T) {
	for _, text := range []string{"", "8", "T", "2026-05-02T", "T08", "8:3", "24:01", "12:60", "2026-13-01", "2026-02-29", "1900-02-29", "26-05-02", "2026-5-2", "2 May", "08:30 h", "-1:00", "0000-01-01", "08:00:00:00"} {
		_, _, err := Hours(text)
		assert.Error(t, err, "%q", text)
	}
	for text, hours := range map[string]float64{"24:00": 24, " 8:30 ": 8.5, "1970-01-02": 24, "2000-02-29": 11016 * 24} {
		got, _, err := Hours(text)
		require.NoError(t, err, text)
		assert.Equal(t, hours, got, text)
	}
}

func FuzzHours(f *testing.F) {
	for _, seed := range []string{"08:30", "2026-05-02T08:30", "2026-05-02", "T", "::"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		hours, _, err := Hours(text)
		if err != nil {
			assert.Zero(t, hours)
			return
		}
		assert.InDelta(t, 0, hours, 24*365.25*10000)
	})
}

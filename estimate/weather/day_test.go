package weather

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/climate"
)

const head = "time,air_c,relative_humidity_percent,surface_c,wind_m_s\n"

func faults(d *Day) map[string]string {
	found := map[string]string{}
	d.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func maybe(t *rapid.T, name string, low, high float64) *float64 {
	if rapid.Bool().Draw(t, name+" given") {
		return new(rapid.Float64Range(low, high).Draw(t, name))
	}
	return nil
}

func through(t *testing.T, d *Day) DayResult {
	t.Helper()
	require.Empty(t, faults(d))
	r, err := d.Calculate()
	require.NoError(t, err)
	return r
}

// An invented morning: too damp at 7, fit from 8 to 10, too windy at 11 (W33:
// 15 mph), dry and fit again at 12.
func TestADay(t *testing.T) {
	d := &Day{CSV: head + "07:00,10,92,10,0\n08:00,15,70,15,1\n09:00,17,65,18,2\n10:00,18,60,20,3\n11:00,19,55,21,16 mph\n12:00,68 °F,50,70 °F,\n"}
	r := through(t, d)
	require.Len(t, r.Products, 1)
	p := r.Products[0]
	assert.Equal(t, []string{"08:00", "09:00", "10:00", "12:00"}, p.Hours)
	assert.Equal(t, []Window{{From: "08:00", To: "10:00", Hours: 2}, {From: "12:00", To: "12:00"}}, p.Windows)
	assert.Equal(t, 2.0, p.UsableH)
	require.Len(t, p.Refused, 2)
	assert.Equal(t, []string{"margin", "humidity"}, p.Refused[0].Bites)
	assert.Equal(t, []string{"wind"}, p.Refused[1].Bites)
	assert.InDelta(t, 21, *r.HottestSustainedC, 1e-12, "70 °F lasts no hour; between 11 and 12 the lower one holds")

	d.DryH = 1 // paint of 10:00 is still wet in the wind of 11:00, which does not hurt it
	assert.Equal(t, p.Hours, through(t, d).Products[0].Hours)
	d.CSV = strings.Replace(d.CSV, "10:00,18,60,20,3", "10:00,18,90,20,3", 1)
	assert.Equal(t, []string{"08:00", "12:00"}, through(t, d).Products[0].Hours, "paint of 9:00 is wet when it gets damp at 10:00")
	assert.Contains(t, through(t, d).Products[0].Refused[1].Reasons[0], "at 10:00, before it is dry")
}

// The same record as a list, with tabs, with semicolons, with CRLF and a byte
// order mark, is the same day.
func TestEveryFormOfARecordIsTheSameDay(t *testing.T) {
	text := head + "2026-05-02T22:00,10,60,14,0\n2026-05-03T00:00,9,65,12,1\n"
	want := through(t, &Day{CSV: text})
	for _, comma := range []string{";", "\t"} {
		assert.Equal(t, want, through(t, &Day{CSV: strings.ReplaceAll(text, ",", comma)}), "%q", comma)
	}
	assert.Equal(t, want, through(t, &Day{CSV: "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n")}))
	assert.Equal(t, want, through(t, &Day{Hours: []Hour{
		{Time: "2026-05-02T22:00", AirC: new(10.0), RelativeHumidityPercent: 60, SurfaceC: new(14.0), WindMS: new(0.0)},
		{Time: "2026-05-03T00:00", AirC: new(9.0), RelativeHumidityPercent: 65, SurfaceC: new(12.0), WindMS: new(1.0)}}}))
}

// Every fault of a record names its row and column; all are told at once.
func TestFaultsOfARecord(t *testing.T) {
	for name, c := range map[string]struct {
		day  Day
		want map[string]string
	}{
		"nothing":       {Day{}, map[string]string{"/hours": "required"}},
		"both":          {Day{Hours: []Hour{{Time: "1:00", AirC: new(1.0), SurfaceC: new(1.0), RelativeHumidityPercent: 5}}, CSV: head + "1:00,1,5,1,1\n"}, map[string]string{"/csv": "inconsistent"}},
		"only a head":   {Day{CSV: head}, map[string]string{"/csv": "required"}},
		"columns":       {Day{CSV: "time,air_c,air_c,humidity\n1:00,1,1,1\n"}, map[string]string{"/csv/1/3": "duplicate_name", "/csv/1/4": "unknown_field", "/csv/1/relative_humidity_percent": "required", "/csv/1/surface_c": "required"}},
		"ragged":        {Day{CSV: head + "1:00,1,5,1\n2:00,1,5,1,1\n"}, map[string]string{"/csv/2": "wrong_type"}},
		"quotes":        {Day{CSV: head + "1:00,\"1,5,1,1\n"}, map[string]string{"/csv/2": "syntax"}},
		"cells":         {Day{CSV: head + "1:00,x,101,,5 m\n"}, map[string]string{"/csv/2/air_c": "not_a_number", "/csv/2/relative_humidity_percent": "out_of_range", "/csv/2/surface_c": "required", "/csv/2/wind_m_s": "not_a_number"}},
		"°F as °C":      {Day{CSV: head + "1:00,70,50,20,1\n"}, map[string]string{"/csv/2/air_c": "out_of_range"}},
		"times":         {Day{CSV: head + "8:00,1,5,1,1\n8:00,1,5,1,1\nnoon,1,5,1,1\n2026-05-02T09:00,1,5,1,1\n,1,5,1,1\n"}, map[string]string{"/csv/3/time": "not_increasing", "/csv/4/time": "wrong_type", "/csv/5/time": "inconsistent", "/csv/6/time": "required"}},
		"hours":         {Day{Hours: []Hour{{Time: "25:00", RelativeHumidityPercent: 101}}}, map[string]string{"/hours/0/time": "wrong_type", "/hours/0/air_c": "required", "/hours/0/surface_c": "required", "/hours/0/relative_humidity_percent": "out_of_range"}},
		"product twice": {Day{CSV: head + "1:00,1,5,1,1\n", Products: []string{"a", "a"}}, map[string]string{"/products/1": "duplicate_id"}},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, c.want, faults(&c.day))
		})
	}
}

// A gap of more than six hours ends a window: nobody knows what lay between.
func TestAGapEndsAWindow(t *testing.T) {
	r := through(t, &Day{CSV: head + "06:00,15,50,16,1\n07:00,15,50,16,1\n14:00,15,50,16,1\n"})
	assert.Equal(t, []Window{{From: "06:00", To: "07:00", Hours: 1}, {From: "14:00", To: "14:00"}}, r.Products[0].Windows)
	assert.Contains(t, strings.Join(r.Warnings, "\n"), "up to 7 h")
}

// A reading passes exactly where the calculator of one weather lets one coat,
// and damper air never helps (identity).
func TestADayAgreesWithOneWeather(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hours := make([]Hour, rapid.IntRange(1, 30).Draw(t, "readings"))
		for i := range hours {
			hours[i] = Hour{Time: fmt.Sprintf("%d:30", i%24), AirC: new(rapid.Float64Range(7.2, 32.2).Draw(t, "air")),
				RelativeHumidityPercent: rapid.Float64Range(0.1, 100).Draw(t, "humidity"), SurfaceC: new(rapid.Float64Range(7.2, 32.2).Draw(t, "surface")), WindMS: maybe(t, "wind", 0, 20)}
			if i >= 24 {
				hours = hours[:24]
				break
			}
		}
		d := Day{Hours: hours}
		require.Empty(t, faults(&d))
		r, err := d.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		may := map[string]bool{}
		for _, at := range r.Products[0].Hours {
			may[at] = true
		}
		for _, h := range hours {
			one, err := climate.DewPoint{AirC: h.AirC, RelativeHumidityPercent: h.RelativeHumidityPercent, SurfaceC: h.SurfaceC, WindMS: h.WindMS}.Calculate()
			require.NoError(t, err)
			assert.Equal(t, *one.MayCoat, may[h.Time])
			assert.Equal(t, *one.MayCoat, len(one.Bites) == 0)
			damp := h.RelativeHumidityPercent <= *one.HighestHumidityPercent
			refused := strings.Join(one.Bites, " ")
			if math.Abs(h.RelativeHumidityPercent-*one.HighestHumidityPercent) > 1e-6 {
				assert.Equal(t, damp, !strings.Contains(refused, "margin") && !strings.Contains(refused, "humidity"), "the highest humidity is where the first of both rules bites")
			}
		}
	})
}

func FuzzRecord(f *testing.F) {
	f.Add(head+"07:00,10,92,10,0\n08:00,15,70,15,1\n", 1.0)
	f.Add("time;air_c;relative_humidity_percent;surface_c\n2026-05-02T07:00;50 °F;92;10\n", 0.0)
	f.Add(head, 0.0)
	f.Add("", 40.0)
	f.Fuzz(func(t *testing.T, text string, dry float64) {
		d := &Day{CSV: text, DryH: dry}
		found := faults(d)
		r, err := d.Calculate()
		if len(found) > 0 {
			return
		}
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		assert.Len(t, r.Readings, len(r.Products[0].Hours)+len(r.Products[0].Refused))
	})
}

package weather

import (
	"fmt"
	"strconv"

	"filmbuild/estimate/stamp"
	"filmbuild/surfaces/quantity"
)

// Day is a record of the weather at the work, and the products that are to be
// applied in it.
type Day struct {
	Hours      []Hour   `json:"hours,omitempty" doc:"the readings in their order, hourly or closer; or give csv"`
	CSV        string   `json:"csv,omitempty" most:"200000" doc:"the readings as text with a header: time, air_c, relative_humidity_percent, surface_c, wind_m_s; cells may carry units"`
	Products   []string `json:"products,omitempty" doc:"product ids; general rules where none is named"`
	MostWindMS *float64 `json:"most_wind_m_s,omitempty" limit:"(0,60]" doc:"most wind to spray in; 6.7 m/s (15 mph, common practice) where left out"`
	DryH       float64  `json:"dry_h,omitempty" limit:"[0,100]" doc:"time from application until the paint is dry, through which the weather must hold; 0 judges each reading by itself"`
}

// Hour is one reading.
type Hour struct {
	Time                    string   `json:"time" doc:"time of day, 08:30, or with its date, 2026-05-02T08:30"`
	AirC                    *float64 `json:"air_c" limit:"[-45,60]" doc:"temperature of the air at the work"`
	RelativeHumidityPercent float64  `json:"relative_humidity_percent" limit:"(0,100]" doc:"of the air at the work, over water"`
	SurfaceC                *float64 `json:"surface_c" limit:"[-45,60]" doc:"temperature of the coldest surface that is coated"`
	WindMS                  *float64 `json:"wind_m_s,omitempty" limit:"[0,60]" doc:"wind; not judged where left out"`
}

// Bounds of a record; this program's own.
const (
	mostReadings = 2000
	mostProducts = 50
	longestGapH  = 6.0 // h between two readings beyond which nothing is known of the time between. Common practice: weather is checked about every 4 h (W17)
)

// NewDay returns a record without readings.
func NewDay() *Day { return &Day{} }

// Check reports every fault of the input.
func (d *Day) Check(report func(pointer, code, detail string)) {
	if len(d.Products) > mostProducts {
		report("/products", "too_many", fmt.Sprintf("products has %d entries; the most is %d", len(d.Products), mostProducts))
	}
	seen := map[string]bool{}
	for i, id := range d.Products {
		if seen[id] {
			report("/products/"+strconv.Itoa(i), "duplicate_id", "this product is named twice")
		}
		seen[id] = true
	}
	switch {
	case len(d.Hours) > 0 && d.CSV != "":
		report("/csv", "inconsistent", "readings are given as hours and as csv; give one")
	case len(d.Hours) == 0 && d.CSV == "":
		report("/hours", "required", "there are no readings; give hours, or csv with the header time,air_c,relative_humidity_percent,surface_c,wind_m_s")
	case len(d.Hours) > mostReadings:
		report("/hours", "too_many", fmt.Sprintf("hours has %d readings; the most is %d", len(d.Hours), mostReadings))
	}
	quantity.Check(d, report) // goes into hours
	for i := range d.Hours {
		h, at := &d.Hours[i], "/hours/"+strconv.Itoa(i)
		if h.AirC == nil {
			report(at+"/air_c", "required", "air_c is missing; measure the temperature of the air at the work")
		}
		if h.SurfaceC == nil {
			report(at+"/surface_c", "required", "surface_c is missing; measure the coldest surface that is coated")
		}
	}
	if d.CSV != "" {
		table := readRecord(d.CSV, report)
		table.order(report)
		return
	}
	record{hours: d.Hours, cell: func(i int, column string) string { return "/hours/" + strconv.Itoa(i) + "/" + column }}.order(report)
}

// record is the readings with the way to name one cell of them.
type record struct {
	hours []Hour
	cell  func(row int, column string) string
}

// order notes times that are none, that mix dates and times of day, or that do
// not increase.
func (r record) order(report func(pointer, code, detail string)) {
	before, known, wereDated := 0.0, false, false
	for i := range r.hours {
		at := r.cell(i, "time")
		if r.hours[i].Time == "" {
			report(at, "required", "time is missing; write 08:30, or 2026-05-02T08:30")
			continue
		}
		now, dated, err := stamp.Hours(r.hours[i].Time)
		switch {
		case err != nil:
			report(at, "wrong_type", err.Error())
			continue
		case known && dated != wereDated:
			report(at, "inconsistent", "some times have a date and some have none; write all alike")
			continue
		case known && now <= before:
			report(at, "not_increasing", fmt.Sprintf("time %s is not after the one before it; readings stand in their order, past midnight with dates", r.hours[i].Time))
		}
		before, known, wereDated = now, true, dated
	}
}

// readings are the sound readings of the input, with their times in hours.
func (d Day) readings() ([]Hour, []float64, error) {
	hours := d.Hours
	if d.CSV != "" {
		sound := true
		hours = readRecord(d.CSV, func(string, string, string) { sound = false }).hours
		if !sound {
			return nil, nil, fmt.Errorf("csv has faults")
		}
	}
	if len(hours) == 0 {
		return nil, nil, fmt.Errorf("there are no readings")
	}
	at := make([]float64, len(hours))
	for i := range hours {
		var err error
		if at[i], _, err = stamp.Hours(hours[i].Time); err != nil {
			return nil, nil, err
		}
		if hours[i].AirC == nil || hours[i].SurfaceC == nil {
			return nil, nil, fmt.Errorf("reading %d lacks a temperature", i+1)
		}
	}
	return hours, at, nil
}

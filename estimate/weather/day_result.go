package weather

import (
	"fmt"
	"math"

	"filmbuild/estimate/climate"
)

// DayResult is when each product may be applied.
type DayResult struct {
	Readings []Reading    `json:"readings"` // the record with its dew points
	Products []ProductDay `json:"products"`

	HottestSustainedC *float64 `json:"hottest_sustained_c,omitempty"` // of the surface, for an hour or more: it picks the longest time to recoat

	Warnings []string `json:"warnings,omitempty"`
}

// Reading is one reading with what follows from it.
type Reading struct {
	Time      string  `json:"time"`
	DewPointC float64 `json:"dew_point_c"` // frost point when below 0 °C
	Frost     bool    `json:"frost"`
	MarginC   float64 `json:"margin_c"` // surface above it
}

// ProductDay is one product through the record.
type ProductDay struct {
	Product  string    `json:"product"`  // empty where no product was named: general rules
	Hours    []string  `json:"hours"`    // times of the readings at which it may be applied
	UsableH  float64   `json:"usable_h"` // length of the windows together
	Windows  []Window  `json:"windows"`
	Refused  []Refusal `json:"refused"`
	Rules    []string  `json:"rules"` // what is asked, each with its source
	Recoat   *Recoat   `json:"recoat,omitempty"`
	Warnings []string  `json:"warnings,omitempty"`
}

// Window is a stretch of the record in which a product may be applied: from a
// reading that passes to the last one that does before the next that refuses.
type Window struct {
	From  string  `json:"from"`
	To    string  `json:"to"`
	Hours float64 `json:"hours"`
}

// Refusal is a reading at which a product may not be applied, with every rule
// that refuses.
type Refusal struct {
	Time    string   `json:"time"`
	Bites   []string `json:"bites"`
	Reasons []string `json:"reasons"`
}

// Recoat is when the next coat of a product applied in this record may go on:
// the least time at the coolest, the most at the hottest sustained surface.
type Recoat struct {
	LeastH *float64 `json:"least_h,omitempty"`
	MostH  float64  `json:"most_h"`
}

// Calculate works out a record for the general rules. Products need For.
func (d Day) Calculate() (DayResult, error) { return d.For([]Applied{{Demands: climate.General()}}) }

// For works out a record for products. It expects input that Check finds sound
// and returns an error otherwise.
func (d Day) For(list []Applied) (DayResult, error) {
	hours, at, err := d.readings()
	if err != nil {
		return DayResult{}, err
	}
	var r DayResult
	surface := make([]float64, len(hours))
	weather := make([]climate.Weather, len(hours))
	windless := 0
	for i, h := range hours {
		weather[i] = climate.Weather{AirC: *h.AirC, HumidityPercent: h.RelativeHumidityPercent, SurfaceC: *h.SurfaceC, WindMS: h.WindMS}
		surface[i] = *h.SurfaceC
		point, frost, err := weather[i].DewPoint()
		if err != nil {
			return DayResult{}, err
		}
		r.Readings = append(r.Readings, Reading{Time: h.Time, DewPointC: point, Frost: frost, MarginC: *h.SurfaceC - point})
		if h.WindMS == nil {
			windless++
		}
	}
	if hottest, found := climate.HottestSustained(at, surface); found {
		r.HottestSustainedC = &hottest
	}
	for _, p := range list {
		if d.MostWindMS != nil {
			p.Demands.WindMS.High, p.Demands.WindMS.Source = *d.MostWindMS, "given by the user"
		}
		day, err := d.through(p, hours, at, weather)
		if err != nil {
			return DayResult{}, err
		}
		day.recoat(p.Recoat, surface, r.HottestSustainedC)
		r.Products = append(r.Products, day)
	}
	r.Warnings = d.warnings(at, surface, windless)
	return r, nil
}

// through holds one product's demands against every reading, and through the
// time until it is dry.
func (d Day) through(p Applied, hours []Hour, at []float64, weather []climate.Weather) (ProductDay, error) {
	day := ProductDay{Product: p.ID, Hours: []string{}, Windows: []Window{}, Refused: []Refusal{}, Rules: p.Demands.Texts(weather[0].WindMS != nil), Warnings: p.Notes}
	refused := make([][]climate.Ruling, len(hours))
	for i := range hours {
		rulings, err := p.Demands.Judge(weather[i])
		if err != nil {
			return ProductDay{}, err
		}
		refused[i] = climate.Refusals(rulings)
	}
	open := -1
	closeAt := func(last int) {
		if open >= 0 {
			w := Window{From: hours[open].Time, To: hours[last].Time, Hours: at[last] - at[open]}
			day.Windows = append(day.Windows, w)
			day.UsableH += w.Hours
		}
		open = -1
	}
	for i := range hours {
		why := refused[i]
		if len(why) == 0 {
			why = d.whileDrying(i, at, hours, refused)
		}
		if open >= 0 && (len(why) > 0 || at[i]-at[i-1] > longestGapH) {
			closeAt(i - 1)
		}
		if len(why) == 0 {
			day.Hours = append(day.Hours, hours[i].Time)
			if open < 0 {
				open = i
			}
			continue
		}
		day.Refused = append(day.Refused, refusal(hours[i].Time, why))
	}
	closeAt(len(hours) - 1)
	return day, nil
}

// whileDrying finds a rule that refuses before paint applied at a reading is
// dry. Wind matters to spraying only, not to drying.
func (d Day) whileDrying(i int, at []float64, hours []Hour, refused [][]climate.Ruling) []climate.Ruling {
	for k := i + 1; k < len(at) && d.DryH > 0 && at[k] <= at[i]+d.DryH+1e-9; k++ {
		for _, rule := range refused[k] {
			if rule.Rule != "wind" {
				rule.Detail = fmt.Sprintf("at %s, before it is dry: %s", hours[k].Time, rule.Detail)
				return []climate.Ruling{rule}
			}
		}
	}
	return nil
}

func refusal(time string, why []climate.Ruling) Refusal {
	r := Refusal{Time: time}
	for _, rule := range why {
		r.Bites = append(r.Bites, rule.Rule)
		r.Reasons = append(r.Reasons, rule.Detail+" ("+rule.Source+")")
	}
	return r
}

func (p *ProductDay) recoat(table []climate.RecoatTime, surface []float64, hottest *float64) {
	if len(table) == 0 || hottest == nil {
		return
	}
	row, found := climate.RecoatAt(table, *hottest)
	if !found {
		p.Warnings = append(p.Warnings, fmt.Sprintf("the times to the next coat are not known at %.3g °C, the hottest sustained surface", *hottest))
		return
	}
	p.Recoat = &Recoat{MostH: row.MostH}
	coolest := math.Inf(1)
	for _, t := range surface {
		coolest = math.Min(coolest, t)
	}
	if cool, found := climate.RecoatAt(table, coolest); found {
		p.Recoat.LeastH = cool.LeastH
	}
}

func (d Day) warnings(at, surface []float64, windless int) []string {
	var said []string
	gap, hot := 0.0, false
	for i := 1; i < len(at); i++ {
		gap = math.Max(gap, at[i]-at[i-1])
		hot = hot || (surface[i] > 38 && at[i]-at[i-1] > 0.5+1e-9)
	}
	if gap > 1+1e-9 {
		said = append(said, fmt.Sprintf("up to %.3g h lie between two readings: hourly is needed to know what the weather did between", gap))
	}
	if hot {
		said = append(said, "above 38 °C read the surface every half hour (UFGS 09971)")
	}
	if windless > 0 {
		said = append(said, fmt.Sprintf("%d of %d readings have no wind, which was not judged there", windless, len(at)))
	}
	if d.DryH == 0 {
		said = append(said, "each reading is judged by itself: give dry_h, so that the weather holds until the paint is dry")
	}
	return append(said, "the surface must stay above the dew point and not fall towards it: stop when the margin shrinks (UFC 3-190-06 9.6.6)",
		"the data sheet of the product in hand comes before these rules")
}

package climate

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// DewPoint is the weather at the work. Without a surface temperature it gives
// the dew point and no verdict.
type DewPoint struct {
	AirC                    *float64 `json:"air_c" limit:"[-45,60]" doc:"temperature of the air at the work"`
	RelativeHumidityPercent float64  `json:"relative_humidity_percent,omitempty" limit:"(0,100]" doc:"of the air at the work, over water; or give wet_bulb_c"`
	WetBulbC                *float64 `json:"wet_bulb_c,omitempty" limit:"[0,60]" doc:"wet bulb of a ventilated psychrometer, in place of the humidity"`
	SurfaceC                *float64 `json:"surface_c,omitempty" limit:"[-45,60]" doc:"temperature of the coldest surface that is coated"`
	WindMS                  *float64 `json:"wind_m_s,omitempty" limit:"[0,60]" doc:"wind at the work, where paint is sprayed outdoors; not judged where left out"`
	MostWindMS              *float64 `json:"most_wind_m_s,omitempty" limit:"(0,60]" doc:"most wind to spray in; 6.7 m/s (15 mph, common practice) where left out"`
	HottestSurfaceC         *float64 `json:"hottest_surface_c,omitempty" limit:"[-45,80]" doc:"highest temperature of the surface that lasts an hour before the next coat; picks the longest time to recoat"`
	Product                 string   `json:"product,omitempty" doc:"product id, whose limits are held against the weather"`

	// Demands are those of the product; general ones where nil. Recoat is its
	// table of times to the next coat. Whoever knows the products sets both.
	Demands *Demands     `json:"-"`
	Recoat  []RecoatTime `json:"-"`
}

// NewDewPoint returns a weather without values; there is no default weather.
func NewDewPoint() *DewPoint { return &DewPoint{} }

// Check reports every fault of the input.
func (d *DewPoint) Check(report func(pointer, code, detail string)) {
	wet := d.WetBulbC != nil && d.RelativeHumidityPercent == 0
	sound := true
	quantity.Check(d, func(pointer, code, detail string) {
		if wet && pointer == "/relative_humidity_percent" {
			return
		}
		sound = false
		if pointer == "/relative_humidity_percent" && d.RelativeHumidityPercent > 100 {
			detail += "; above 100 % the instrument wants calibrating"
		}
		report(pointer, code, detail)
	})
	switch {
	case d.AirC == nil:
		report("/air_c", "required", "air_c is missing; measure the temperature of the air at the work")
	case d.WetBulbC != nil && !wet:
		report("/wet_bulb_c", "inconsistent", "humidity and wet bulb are two ways to say the same; give one")
	case wet && sound:
		if _, err := HumidityFromWetBulb(*d.AirC, *d.WetBulbC); err != nil {
			report("/wet_bulb_c", "inconsistent", err.Error())
		}
	}
}

// DewPointResult is a dew point and, where the surface is known, a verdict.
type DewPointResult struct {
	DewPointC                      float64  `json:"dew_point_c"` // frost point when below 0 °C
	Frost                          bool     `json:"frost"`       // whether dew_point_c is a frost point
	RelativeHumidityPercent        float64  `json:"relative_humidity_percent"`
	MinimumSurfaceC                float64  `json:"minimum_surface_c"`
	WaterContentGM3                float64  `json:"water_content_g_m3"` // in the air as it is
	MarginC                        *float64 `json:"margin_c,omitempty"` // surface above dew point
	SurfaceRelativeHumidityPercent *float64 `json:"surface_relative_humidity_percent,omitempty"`
	MayCoat                        *bool    `json:"may_coat,omitempty"`
	Bites                          []string `json:"bites,omitempty"`   // the rules that refuse
	Reasons                        []string `json:"reasons,omitempty"` // one for each rule that was tested: passed or refused
	Rules                          []Ruling `json:"rules,omitempty"`   // the same, with their sources

	// As the air gets damper, with air and surface as they are.
	HighestHumidityPercent *float64 `json:"highest_humidity_percent,omitempty"` // at which both rules still pass
	FirstToBite            string   `json:"first_to_bite,omitempty"`            // margin or humidity: the rule that refuses above it

	RecoatLeastH *float64 `json:"recoat_least_h,omitempty"` // at the surface as it is
	RecoatMostH  *float64 `json:"recoat_most_h,omitempty"`  // at the hottest surface that lasts an hour

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}

const (
	sourceWater   = "WMO guide, Sonntag's form over water, −45 to 60 °C"
	sourceIce     = "over ice, coefficients from memory; within 0.08 °C of a published table"
	sourceContent = "gas law for water vapour"
	identity      = "identity"
)

// Calculate works out a weather. It expects input that Check finds sound and
// returns an error otherwise.
func (d DewPoint) Calculate() (DewPointResult, error) {
	if d.AirC == nil {
		return DewPointResult{}, fmt.Errorf("air_c is missing")
	}
	if err := d.withinLimits(); err != nil {
		return DewPointResult{}, err
	}
	r := DewPointResult{Working: make([]quantity.Working, 0, 4)}
	if err := d.humidity(&r); err != nil {
		return DewPointResult{}, err
	}
	w := Weather{AirC: *d.AirC, HumidityPercent: r.RelativeHumidityPercent, WindMS: d.WindMS}
	var err error
	if r.DewPointC, r.Frost, err = w.DewPoint(); err != nil {
		return DewPointResult{}, err
	}
	point := quantity.Working{Quantity: "dew_point_c", Value: r.DewPointC, Unit: "°C", Source: sourceWater,
		Formula: "243.12·(ln(RH/100) + 17.62·t/(243.12 + t))/(17.62 − (ln(RH/100) + 17.62·t/(243.12 + t)))",
		Terms:   map[string]float64{"t": w.AirC, "RH": w.HumidityPercent}}
	if r.Frost {
		point.Formula, point.Source = "272.62·(ln(RH/100) + 17.62·t/(243.12 + t))/(22.46 − (ln(RH/100) + 17.62·t/(243.12 + t)))", sourceIce
	}
	saturated, err := WaterContent(w.AirC)
	if err != nil {
		return DewPointResult{}, err
	}
	r.WaterContentGM3 = w.HumidityPercent / 100 * saturated
	r.MinimumSurfaceC = r.DewPointC + d.demands().MarginC
	r.Working = append(r.Working, point,
		quantity.Working{Quantity: "water_content_g_m3", Value: r.WaterContentGM3, Unit: "g/m³", Formula: "RH/100·ws",
			Terms: map[string]float64{"RH": w.HumidityPercent, "ws": saturated}, Source: sourceContent})
	if d.SurfaceC != nil {
		w.SurfaceC = *d.SurfaceC
		if err := d.judge(w, &r); err != nil {
			return DewPointResult{}, err
		}
	}
	d.recoat(&r)
	r.Warnings = append(r.Warnings, d.warnings(r)...)
	return r, nil
}

// humidity takes the humidity as given, or from the wet bulb.
func (d DewPoint) humidity(r *DewPointResult) error {
	r.RelativeHumidityPercent = d.RelativeHumidityPercent
	if d.WetBulbC == nil || d.RelativeHumidityPercent != 0 {
		return nil
	}
	h, err := HumidityFromWetBulb(*d.AirC, *d.WetBulbC)
	if err != nil {
		return err
	}
	r.RelativeHumidityPercent = 100 * h
	r.Working = append(r.Working, quantity.Working{Quantity: "relative_humidity_percent", Value: 100 * h, Unit: "%",
		Formula: "min(100, 100·(exp(17.62·tw/(243.12 + tw)) − A·p/6.112·(t − tw))/exp(17.62·t/(243.12 + t)))",
		Terms:   map[string]float64{"t": *d.AirC, "tw": *d.WetBulbC, "A": psychrometer, "p": standardPressure},
		Source:  "psychrometer equation of the WMO guide, ventilated bulb, coefficient from memory"})
	return nil
}

func (d DewPoint) withinLimits() error {
	for _, l := range []struct {
		name  string
		value *float64
		high  float64
		above bool
	}{{"wind", d.WindMS, 60, false}, {"most wind", d.MostWindMS, 60, true}} {
		if l.value == nil {
			continue
		}
		if err := quantity.Within(l.name, *l.value, "m/s", quantity.Limits{High: l.high, LowOpen: l.above}); err != nil {
			return err
		}
	}
	return nil
}

// demands are those of the product, or the general ones, with the wind of the
// input.
func (d DewPoint) demands() Demands {
	wanted := General()
	if d.Demands != nil {
		wanted = *d.Demands
	}
	if d.MostWindMS != nil {
		wanted.WindMS.High, wanted.WindMS.Source = *d.MostWindMS, "given by the user"
	}
	return wanted
}

package climate

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// DewPoint is the weather at the work. Without a surface temperature it gives
// the dew point and no verdict.
type DewPoint struct {
	AirC                    *float64 `json:"air_c" limit:"[-45,60]" doc:"temperature of the air at the work"`
	RelativeHumidityPercent float64  `json:"relative_humidity_percent" limit:"(0,100]" doc:"of the air at the work, over water"`
	SurfaceC                *float64 `json:"surface_c,omitempty" limit:"[-45,60]" doc:"temperature of the coldest surface that is coated"`
	WindMS                  *float64 `json:"wind_m_s,omitempty" limit:"[0,60]" doc:"wind at the work, where paint is sprayed outdoors"`
}

// NewDewPoint returns a weather without values; there is no default weather.
func NewDewPoint() *DewPoint { return &DewPoint{} }

// The limits that coating work is held to.
const (
	leastMargin  = 3.0  // °C above the dew point. Source: UFC 3-190-06 9.6.6, IMO guidelines (W15)
	mostHumidity = 85.0 // %. Source: IMO guidelines, US federal road standard (W16)
	mostWind     = 6.7  // m/s, 15 mph. Common practice: no published number was found (W33)

	leastUsual, mostUsual = 7.2, 32.2 // °C of air and surface, 45 to 90 °F. Source: UFC 3-190-06 7.4.1 (W20)
)

// Check reports every fault of the input.
func (d *DewPoint) Check(report func(pointer, code, detail string)) {
	quantity.Check(d, report)
	if d.AirC == nil {
		report("/air_c", "required", "air_c is missing; measure the temperature of the air at the work")
	}
}

// DewPointResult is a dew point and, where the surface is known, a verdict.
type DewPointResult struct {
	DewPointC                      float64  `json:"dew_point_c"` // frost point when below 0 °C
	Frost                          bool     `json:"frost"`       // whether dew_point_c is a frost point
	MinimumSurfaceC                float64  `json:"minimum_surface_c"`
	WaterContentGM3                float64  `json:"water_content_g_m3"` // in the air as it is
	MarginC                        *float64 `json:"margin_c,omitempty"` // surface above dew point
	SurfaceRelativeHumidityPercent *float64 `json:"surface_relative_humidity_percent,omitempty"`
	MayCoat                        *bool    `json:"may_coat,omitempty"`
	Reasons                        []string `json:"reasons,omitempty"` // one for each rule that was tested: passed or refused

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
	air, humidity := *d.AirC, d.RelativeHumidityPercent/100
	if err := d.withinLimits(); err != nil {
		return DewPointResult{}, err
	}
	var r DewPointResult
	var err error
	if r.DewPointC, err = DewPointOverWater(air, humidity); err != nil {
		return DewPointResult{}, err
	}
	point := quantity.Working{Quantity: "dew_point_c", Unit: "°C", Formula: "243.12·(ln(RH/100) + 17.62·t/(243.12 + t))/(17.62 − (ln(RH/100) + 17.62·t/(243.12 + t)))", Source: sourceWater}
	if r.DewPointC < 0 {
		r.Frost = true
		if r.DewPointC, err = FrostPoint(air, humidity); err != nil {
			return DewPointResult{}, err
		}
		point.Formula, point.Source = "272.62·(ln(RH/100) + 17.62·t/(243.12 + t))/(22.46 − (ln(RH/100) + 17.62·t/(243.12 + t)))", sourceIce
	}
	point.Value, point.Terms = r.DewPointC, map[string]float64{"t": air, "RH": d.RelativeHumidityPercent}
	saturated, err := WaterContent(air)
	if err != nil {
		return DewPointResult{}, err
	}
	r.WaterContentGM3 = humidity * saturated
	r.MinimumSurfaceC = r.DewPointC + leastMargin
	r.Working = append(make([]quantity.Working, 0, 4), point,
		quantity.Working{Quantity: "water_content_g_m3", Value: r.WaterContentGM3, Unit: "g/m³", Formula: "RH/100·ws",
			Terms: map[string]float64{"RH": d.RelativeHumidityPercent, "ws": saturated}, Source: sourceContent})
	if d.SurfaceC != nil {
		if err := d.judge(&r); err != nil {
			return DewPointResult{}, err
		}
	}
	r.Warnings = d.warnings(r)
	return r, nil
}

func (d DewPoint) withinLimits() error {
	if d.WindMS != nil {
		return quantity.Within("wind", *d.WindMS, "m/s", quantity.Limits{High: 60})
	}
	return nil
}

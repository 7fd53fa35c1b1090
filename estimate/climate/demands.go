package climate

import (
	"fmt"
	"math"
)

// The limits that coating work is held to where nothing better is known.
const (
	leastMargin  = 3.0    // °C above the dew point. Source: UFC 3-190-06 9.6.6, IMO guidelines (W15)
	mostHumidity = 85.0   // %. Source: IMO guidelines, US federal road standard (W16)
	mostWind     = 6.7056 // m/s, 15 mph. Common practice: no published number was found (W33)

	leastUsual, mostUsual = 7.2, 32.2 // °C of air and surface, 45 to 90 °F. Source: UFC 3-190-06 7.4.1 (W20)
)

const (
	sourceMargin   = "UFC 3-190-06 9.6.6; IMO guidelines for protective coatings 3.3.4"
	sourceHumidity = "IMO guidelines for protective coatings 3.3.4; US federal road and bridge standard"
	sourceWind     = "15 mph, common practice; no published number was found"
	sourceUsual    = "UFC 3-190-06 7.4.1, most paints"
)

// Bound is what is asked of one measurement of the weather.
type Bound struct {
	Low    float64 // −∞ where there is none
	High   float64 // +∞ where there is none
	Source string
}

// Demands are what a product, or a general rule, asks of the weather.
type Demands struct {
	AirC, SurfaceC, HumidityPercent, WindMS Bound

	MarginC      float64 // of the surface above the dew point
	MarginSource string
}

// General returns what general specifications ask of coating work. The wind is
// a default of common practice, for which no published number was found.
func General() Demands {
	usual := Bound{Low: leastUsual, High: mostUsual, Source: sourceUsual}
	return Demands{
		AirC: usual, SurfaceC: usual,
		HumidityPercent: Bound{Low: math.Inf(-1), High: mostHumidity, Source: sourceHumidity},
		WindMS:          Bound{Low: math.Inf(-1), High: mostWind, Source: sourceWind},
		MarginC:         leastMargin, MarginSource: sourceMargin,
	}
}

// Ruling is one rule held against the weather.
type Ruling struct {
	Rule   string `json:"rule"` // margin, humidity, wind, air or surface
	Passes bool   `json:"passes"`
	Detail string `json:"detail"`
	Source string `json:"source"`
}

// Weather is the air and the surface at one moment. A nil wind is not judged.
type Weather struct {
	AirC, HumidityPercent, SurfaceC float64
	WindMS                          *float64
}

// DewPoint is the dew point of the air, or its frost point where that is below
// 0 °C, in °C.
func (w Weather) DewPoint() (at float64, frost bool, err error) {
	if at, err = DewPointOverWater(w.AirC, w.HumidityPercent/100); err != nil || at >= 0 {
		return at, false, err
	}
	at, err = FrostPoint(w.AirC, w.HumidityPercent/100)
	return at, true, err
}

// Judge holds every rule against the weather, so that each says by itself
// whether it bites: the margin first, then humidity, wind, air and surface.
// Temperatures are in °C in [−45, 60], humidity in percent in (0, 100];
// outside those ranges it returns a *quantity.RangeError.
func (d Demands) Judge(w Weather) ([]Ruling, error) {
	at, frost, err := w.DewPoint()
	if err != nil {
		return nil, err
	}
	point := "dew point"
	if frost {
		point = "frost point"
	}
	margin := w.SurfaceC - at
	detail := fmt.Sprintf("the surface is %.2f °C above the %s", margin, point)
	rulings := []Ruling{{"margin", margin >= d.MarginC, detail + fmt.Sprintf(", at least %.3g °C", d.MarginC), d.MarginSource}}
	if !rulings[0].Passes {
		rulings[0].Detail = detail + fmt.Sprintf("; it must be at least %.3g °C above it", d.MarginC)
	}
	rulings = append(rulings, d.HumidityPercent.rule("humidity", "relative humidity", w.HumidityPercent, "%"))
	if w.WindMS != nil {
		rulings = append(rulings, d.WindMS.rule("wind", "wind", *w.WindMS, "m/s"))
	}
	return append(rulings, d.AirC.rule("air", "the air", w.AirC, "°C"), d.SurfaceC.rule("surface", "the surface", w.SurfaceC, "°C")), nil
}

// rule holds a bound against a value. Bounds stand in °F or mph in most sources:
// a value that is one of them in rounded SI is inside.
func (b Bound) rule(name, what string, value float64, unit string) Ruling {
	const slack = 1e-9
	said := fmt.Sprintf("%s is %.4g %s", what, value, unit)
	switch {
	case math.IsInf(b.Low, -1) && math.IsInf(b.High, 1):
		return Ruling{name, true, said, b.Source}
	case value > b.High+slack:
		return Ruling{name, false, said + fmt.Sprintf("; it must be at most %.4g %s", b.High, unit), b.Source}
	case value < b.Low-slack:
		return Ruling{name, false, said + fmt.Sprintf("; it must be at least %.4g %s", b.Low, unit), b.Source}
	case math.IsInf(b.Low, -1):
		return Ruling{name, true, said + fmt.Sprintf(", at most %.4g %s", b.High, unit), b.Source}
	case math.IsInf(b.High, 1):
		return Ruling{name, true, said + fmt.Sprintf(", at least %.4g %s", b.Low, unit), b.Source}
	}
	return Ruling{name, true, said + fmt.Sprintf(", between %.4g and %.4g %s", b.Low, b.High, unit), b.Source}
}

// HighestHumidity returns the relative humidity, in percent, up to which the
// rules of the margin and of humidity allow work at this air and surface, and
// the rule that bites first as the air gets damper: margin or humidity.
//
//	h = min(limit, 100 · e(surface − margin)/e(air))
//
// e is over ice where surface − margin is below 0 °C. Temperatures are in °C in
// [−45, 60]; outside it returns a *quantity.RangeError.
//
// Source: identity, the humidity at which the dew point lies the margin below
// the surface; W31 and W32 in tests/published.
func (d Demands) HighestHumidity(air, surface float64) (percent float64, bites string, err error) {
	if _, err := SurfaceHumidity(air, 1, surface); err != nil {
		return 0, "", err
	}
	wet := surface - d.MarginC
	pressure := saturation(wet)
	if wet < 0 {
		pressure = saturationAtZero * math.Exp(iceSlope*wet/(iceOffset+wet))
	}
	percent = 100 * pressure / saturation(air)
	if percent >= d.HumidityPercent.High {
		return d.HumidityPercent.High, "humidity", nil
	}
	return percent, "margin", nil
}

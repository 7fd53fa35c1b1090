package climate

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// judge tests every rule, so that each reason says by itself whether it bites.
func (d DewPoint) judge(r *DewPointResult) error {
	margin := *d.SurfaceC - r.DewPointC
	humidity, err := SurfaceHumidity(*d.AirC, d.RelativeHumidityPercent/100, *d.SurfaceC)
	if err != nil {
		return err
	}
	r.MarginC = &margin
	r.SurfaceRelativeHumidityPercent = new(100 * humidity)
	r.Working = append(r.Working, quantity.Working{Quantity: "margin_c", Value: margin, Unit: "°C", Formula: "ts − td",
		Terms: map[string]float64{"ts": *d.SurfaceC, "td": r.DewPointC}, Source: identity})

	may := true
	rule := func(passes bool, passed, refused string) {
		if passes {
			r.Reasons = append(r.Reasons, "passed: "+passed)
			return
		}
		may = false
		r.Reasons = append(r.Reasons, "refused: "+refused)
	}
	point := "dew point"
	if r.Frost {
		point = "frost point"
	}
	rule(margin >= leastMargin,
		fmt.Sprintf("the surface is %.2f °C above the %s, at least 3 °C", margin, point),
		fmt.Sprintf("the surface is %.2f °C above the %s; it must be at least 3 °C above it", margin, point))
	rule(d.RelativeHumidityPercent <= mostHumidity,
		fmt.Sprintf("relative humidity is %.4g %%, at most 85 %%", d.RelativeHumidityPercent),
		fmt.Sprintf("relative humidity is %.4g %%; it must be at most 85 %%", d.RelativeHumidityPercent))
	if d.WindMS != nil {
		rule(*d.WindMS <= mostWind,
			fmt.Sprintf("wind is %.3g m/s, at most 6.7 m/s (15 mph, common practice)", *d.WindMS),
			fmt.Sprintf("wind is %.3g m/s; for spraying it must be at most 6.7 m/s (15 mph, common practice)", *d.WindMS))
	}
	r.MayCoat = &may
	return nil
}

// warnings says what the rules leave out. Without a surface there is no
// verdict, but what forbids coating at any surface temperature is still said.
func (d DewPoint) warnings(r DewPointResult) []string {
	var said []string
	add := func(when bool, text string) {
		if when {
			said = append(said, text)
		}
	}
	add(d.SurfaceC == nil && d.RelativeHumidityPercent > mostHumidity, "relative humidity is above 85 %: do not coat, whatever the surface temperature")
	add(d.SurfaceC == nil && d.WindMS != nil && *d.WindMS > mostWind, "wind is above 6.7 m/s (15 mph, common practice): do not spray")
	outside := func(t float64) bool { return t < leastUsual || t > mostUsual }
	add(outside(*d.AirC) || (d.SurfaceC != nil && outside(*d.SurfaceC)),
		"most paints want air and surface between 7 and 32 °C; the product's data sheet decides")
	add(r.DewPointC < airLimits.Low, "the dew point lies below −45 °C, where the formula is extrapolated")
	add(r.MayCoat != nil && *r.MayCoat, "measure again about every 4 hours, and go on only while the surface keeps its distance from the dew point")
	return said
}

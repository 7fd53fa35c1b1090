package climate

import (
	"fmt"
	"slices"

	"filmbuild/surfaces/quantity"
)

// judge tests every rule, and says which bite and which would bite first.
// Temperatures are judged where a product asks for some; the general range of
// most paints is a warning.
func (d DewPoint) judge(w Weather, r *DewPointResult) error {
	wanted := d.demands()
	rulings, err := wanted.Judge(w)
	if err != nil {
		return err
	}
	humidity, err := SurfaceHumidity(w.AirC, w.HumidityPercent/100, w.SurfaceC)
	if err != nil {
		return err
	}
	highest, first, err := wanted.HighestHumidity(w.AirC, w.SurfaceC)
	if err != nil {
		return err
	}
	r.MarginC = new(w.SurfaceC - r.DewPointC)
	r.SurfaceRelativeHumidityPercent = new(100 * humidity)
	r.HighestHumidityPercent, r.FirstToBite = &highest, first
	r.Working = append(r.Working, quantity.Working{Quantity: "margin_c", Value: *r.MarginC, Unit: "°C", Formula: "ts − td",
		Terms: map[string]float64{"ts": w.SurfaceC, "td": r.DewPointC}, Source: identity})
	for _, rule := range rulings {
		if d.Demands == nil && (rule.Rule == "air" || rule.Rule == "surface") {
			continue
		}
		r.Rules = append(r.Rules, rule)
		verdict := "passed: "
		if !rule.Passes {
			verdict = "refused: "
			r.Bites = append(r.Bites, rule.Rule)
		}
		if rule.Rule == "wind" && d.MostWindMS == nil {
			rule.Detail += " (15 mph, common practice)"
		}
		r.Reasons = append(r.Reasons, verdict+rule.Detail)
	}
	r.MayCoat = new(len(r.Bites) == 0)
	return nil
}

// warnings says what the rules leave out. Without a surface there is no
// verdict, but what forbids coating at any surface temperature is still said.
func (d DewPoint) warnings(r DewPointResult) []string {
	var said []string
	add := func(when bool, format string, args ...any) {
		if when {
			said = append(said, fmt.Sprintf(format, args...))
		}
	}
	wanted := d.demands()
	damp := wanted.HumidityPercent.High
	add(d.SurfaceC == nil && r.RelativeHumidityPercent > damp, "relative humidity is above %.4g %%: do not coat, whatever the surface temperature", damp)
	add(d.SurfaceC == nil && d.WindMS != nil && *d.WindMS > wanted.WindMS.High, "wind is above %.3g m/s (%s): do not spray", wanted.WindMS.High, wanted.WindMS.Source)
	outside := func(t float64) bool { return t < leastUsual || t > mostUsual }
	add(d.Demands == nil && (outside(*d.AirC) || (d.SurfaceC != nil && outside(*d.SurfaceC))),
		"most paints want air and surface between 7 and 32 °C; the product's data sheet decides")
	add(r.DewPointC < airLimits.Low, "the dew point lies below −45 °C, where the formula is extrapolated")
	may := r.MayCoat != nil && *r.MayCoat
	add(may && d.WindMS == nil, "wind is not given and not judged: outdoors measure it before you spray")
	add(d.WindMS != nil && d.MostWindMS == nil, "the limit of 6.7 m/s for wind is a default of common practice; no published number was found: give most_wind_m_s where your specification has one")
	add(may, "measure again about every 4 hours, and go on only while the surface keeps its distance from the dew point")
	return said
}

// Refusals are the rules that refuse.
func Refusals(rulings []Ruling) []Ruling {
	return slices.DeleteFunc(slices.Clone(rulings), func(r Ruling) bool { return r.Passes })
}

package climate

import (
	"fmt"
	"math"
)

// Texts lists the demands in words, each with its source.
func (d Demands) Texts(wind bool) []string {
	list := []string{fmt.Sprintf("surface at least %.3g °C above the dew point (%s)", d.MarginC, d.MarginSource)}
	for _, b := range []struct {
		what, unit string
		bound      Bound
		told       bool
	}{{"relative humidity", "%", d.HumidityPercent, true}, {"wind", "m/s", d.WindMS, wind}, {"air", "°C", d.AirC, true}, {"surface", "°C", d.SurfaceC, true}} {
		if !b.told {
			continue
		}
		list = append(list, fmt.Sprintf("%s %s (%s)", b.what, b.bound.text(b.unit), b.bound.Source))
	}
	return list
}

func (b Bound) text(unit string) string {
	switch {
	case math.IsInf(b.Low, -1):
		return fmt.Sprintf("at most %.4g %s", b.High, unit)
	case math.IsInf(b.High, 1):
		return fmt.Sprintf("at least %.4g %s", b.Low, unit)
	}
	return fmt.Sprintf("%.4g to %.4g %s", b.Low, b.High, unit)
}

// Package weather says what a product asks of the weather, and when in a record
// of the weather it may be applied: by the limits of the product itself where it
// has them, by general rules for the rest.
package weather

import (
	"math"

	"filmbuild/estimate/climate"
	"filmbuild/products"
)

// Applied is a product with what it asks of the weather.
type Applied struct {
	ID      string
	Demands climate.Demands
	Recoat  []climate.RecoatTime
	Notes   []string
}

// For returns a product with what it asks of the weather: its own limits where
// it has them, the general rules for the rest. It is false for a product that is
// not applied to a surface.
func For(p products.Product, catalogue *products.Catalogue) (Applied, bool) {
	var own *products.Weather
	a := Applied{ID: p.Base().ID, Demands: climate.General()}
	switch x := p.(type) {
	case *products.Paint:
		own = x.Weather
		for _, row := range x.Recoat {
			a.Recoat = append(a.Recoat, climate.RecoatTime{FromC: row.FromC, ToC: row.ToC, LeastH: row.MinH, MostH: row.MaxH})
		}
	case *products.Liquid:
		own = x.Weather
	default:
		return a, false
	}
	if own == nil {
		a.Notes = append(a.Notes, "no limits of its own are known: general rules are held against the weather; give its weather in products")
		return a, true
	}
	source := func(quantity string) string {
		for _, l := range catalogue.Limits(p.Base().ID) {
			if l.Quantity == quantity {
				return l.Text()
			}
		}
		return "the product " + p.Base().ID
	}
	a.Demands.AirC = bound(a.Demands.AirC, own.AirLowC, own.AirHighC, source("air_c"))
	a.Demands.SurfaceC = bound(a.Demands.SurfaceC, own.SurfaceLowC, own.SurfaceHighC, source("surface_c"))
	a.Demands.HumidityPercent = bound(a.Demands.HumidityPercent, own.HumidityLowPercent, own.HumidityHighPercent, source("relative_humidity_percent"))
	if own.DewMarginC != nil {
		a.Demands.MarginC, a.Demands.MarginSource = *own.DewMarginC, source("dew_margin_c")
	}
	return a, true
}

// bound replaces the ends of a general bound that a product gives.
func bound(general climate.Bound, low, high *float64, source string) climate.Bound {
	if low == nil && high == nil {
		return general
	}
	if low != nil && high != nil || math.IsInf(general.Low, -1) && high != nil {
		general.Source = source
	} else {
		general.Source = source + "; otherwise " + general.Source
	}
	if low != nil {
		general.Low = *low
	}
	if high != nil {
		general.High = *high
	}
	return general
}

package products

// Weather is what a data sheet asks of the weather at the work. What is left out
// falls to the general rules.
type Weather struct {
	AirLowC             *float64 `json:"air_low_c,omitempty" limit:"[-45,60]" doc:"coldest air it is applied in"`
	AirHighC            *float64 `json:"air_high_c,omitempty" limit:"[-45,60]" doc:"warmest air"`
	SurfaceLowC         *float64 `json:"surface_low_c,omitempty" limit:"[-45,80]" doc:"coldest surface"`
	SurfaceHighC        *float64 `json:"surface_high_c,omitempty" limit:"[-45,80]" doc:"warmest surface"`
	HumidityLowPercent  *float64 `json:"humidity_low_percent,omitempty" limit:"[0,100]" doc:"driest air, of paints that need water to cure"`
	HumidityHighPercent *float64 `json:"humidity_high_percent,omitempty" limit:"(0,100]" doc:"dampest air"`
	DewMarginC          *float64 `json:"dew_margin_c,omitempty" limit:"[0,30]" doc:"least distance of the surface above the dew point"`
}

// check reports bounds that cross.
func (w *Weather) check(report func(pointer, code, detail string)) {
	if w == nil {
		return
	}
	at := func(pointer, code, detail string) { report("/weather"+pointer, code, detail) }
	ordered(at, []rung{{"air_low_c", w.AirLowC}, {"air_high_c", w.AirHighC}})
	ordered(at, []rung{{"surface_low_c", w.SurfaceLowC}, {"surface_high_c", w.SurfaceHighC}})
	ordered(at, []rung{{"humidity_low_percent", w.HumidityLowPercent}, {"humidity_high_percent", w.HumidityHighPercent}})
}

// weathered is a product that is applied in the weather.
type weathered interface{ weather() **Weather }

func (p *Paint) weather() **Weather  { return &p.Weather }
func (l *Liquid) weather() **Weather { return &l.Weather }

// weatherLimits reads weather_limits.csv into the products and keeps each limit
// with its source. A row is of the product of that id or, where there is none,
// of every paint of the family.
func (l *loader) weatherLimits() {
	seen := map[string]row{}
	for _, r := range l.rows("weather_limits.csv") {
		limit := Limit{Quantity: quantity(r, "air_c", "surface_c", "relative_humidity_percent", "dew_margin_c"), Unit: r.text("unit"), Provenance: l.provenance(r)}
		limit.Low, limit.High = bounded(r, "low", limit.Quantity), bounded(r, "high", limit.Quantity)
		if r.text("low") == "" && r.text("high") == "" {
			r.fault("low", "is empty, and high too; give at least one")
		}
		ordered(func(pointer, _, detail string) { r.fault(pointer[1:], "%s", detail) }, []rung{{"low", limit.Low}, {"high", limit.High}})
		of := r.required("of")
		if of == "" || limit.Quantity == "" || !once(seen, of+" "+limit.Quantity, r, "quantity", "limit") {
			continue
		}
		found := false
		_, one := l.c.byID[of]
		for _, p := range l.c.products {
			paint, _ := p.(*Paint)
			own := p.Base().ID == of
			if w, applied := p.(weathered); applied && (own || (!one && paint != nil && paint.Family == of)) {
				found = true
				l.weatherLimit(p.Base().ID, w, limit)
			}
		}
		if !found {
			r.fault("of", "there is no paint, liquid or family %q", clip(of))
		}
	}
}

func (l *loader) weatherLimit(id string, w weathered, limit Limit) {
	at := w.weather()
	if *at == nil {
		*at = &Weather{}
	}
	switch limit.Quantity {
	case "air_c":
		(*at).AirLowC, (*at).AirHighC = limit.Low, limit.High
	case "surface_c":
		(*at).SurfaceLowC, (*at).SurfaceHighC = limit.Low, limit.High
	case "relative_humidity_percent":
		(*at).HumidityLowPercent, (*at).HumidityHighPercent = limit.Low, limit.High
	case "dew_margin_c":
		(*at).DewMarginC = limit.Low
	}
	l.c.limits[id] = append(l.c.limits[id], limit)
}

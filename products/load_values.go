package products

import (
	"slices"
	"strings"
)

// quantityForm is the unit of a quantity in the value files and the bounds
// outside which a number is a slip of the pen.
type quantityForm struct{ unit, limits string }

func formOf(quantity string) quantityForm {
	switch quantity {
	case "bulk_density_kg_m3":
		return quantityForm{"kg/m³", "[50,8000]"}
	case "breakdown_percent", "transfer_efficiency_percent":
		return quantityForm{"%", "(0,100]"}
	case "size_um":
		return quantityForm{"µm", "(0,10000]"}
	case "strip_at_film_um":
		return quantityForm{"µm", "(0,20000]"}
	case "strip_at_bore_mm":
		return quantityForm{"mm", "[0.5,50]"}
	case "standoff_mm":
		return quantityForm{"mm", "(0,2000]"}
	case "grit":
		return quantityForm{"", "[8,10000]"}
	case "mohs":
		return quantityForm{"", "(0,10]"}
	case "strip_rate_m2_h", "rate_m2_h":
		return quantityForm{"m²/h", "(0,2000]"}
	case "rate_m_h":
		return quantityForm{"m/h", "(0,1000]"}
	case "pressure_kpa", "breakdown_at_kpa", "strip_at_kpa":
		return quantityForm{"kPa", "(0,1400]"}
	case "pass_wet_film_um":
		return quantityForm{"µm", "(0,5000]"}
	case "cleaning_l":
		return quantityForm{"L", "[0,100]"}
	case "skin_mm":
		return quantityForm{"mm", "(0,100]"}
	case "air_c", "surface_c", "dew_margin_c":
		return quantityForm{"°C", "[-45,80]"}
	case "relative_humidity_percent":
		return quantityForm{"%", "[0,100]"}
	case "dwell_s", "total_dwell_s":
		return quantityForm{"s", "(0,3600]"}
	}
	return quantityForm{}
}

// quantity reads the quantity of a record and its unit; allowed are those of
// the file.
func quantity(r row, allowed ...string) string {
	name := r.required("quantity")
	if name == "" {
		return ""
	}
	if !slices.Contains(allowed, name) {
		r.fault("quantity", "is %q; it must be one of %s", clip(name), strings.Join(allowed, ", "))
		return ""
	}
	if unit := formOf(name).unit; r.text("unit") != unit {
		r.fault("unit", "is %q; %s is in %q", clip(r.text("unit")), name, unit)
	}
	return name
}

// bounded reads a number of a quantity and notes one outside its bounds.
func bounded(r row, column, quantity string) *float64 {
	number, ok := r.number(column)
	if !ok || quantity == "" {
		return nil
	}
	if limits, err := parseInterval(formOf(quantity).limits); err != nil || !limits.holds(number) {
		unit := unitOf(quantity)
		r.fault(column, "is %g%s; it must be %s", number, unit, limits.text(unit))
		return nil
	}
	return &number
}

// value reads low, likely and high of a record; ok is false when any is
// missing or wrong, which is noted.
func (l *loader) value(r row, allowed ...string) (Value, bool) {
	v := Value{Quantity: quantity(r, allowed...), Substrate: r.text("substrate"), Unit: r.text("unit"), Provenance: l.provenance(r)}
	columns := []string{"low", "likely", "high"}
	var found []rung
	for _, column := range columns {
		r.required(column)
		if number := bounded(r, column, v.Quantity); number != nil {
			found = append(found, rung{column, number})
		}
	}
	if len(found) < len(columns) {
		return v, false
	}
	v.Low, v.Likely, v.High = *found[0].value, *found[1].value, *found[2].value
	ordered(func(pointer, _, detail string) { r.fault(pointer[1:], "%s", detail) }, found)
	return v, true
}

func (l *loader) mediaValues() {
	seen := map[string]row{}
	for _, r := range l.rows("media_values.csv") {
		v, ok := l.value(r, "bulk_density_kg_m3", "breakdown_percent", "size_um", "mohs", "strip_rate_m2_h",
			"breakdown_at_kpa", "strip_at_bore_mm", "strip_at_kpa", "strip_at_film_um")
		m := l.media(r)
		if !ok || m == nil || !once(seen, strings.Join([]string{m.ID, v.Quantity, v.Substrate}, " "), r, "quantity", "value") {
			continue
		}
		if !m.take(v) {
			r.fault("substrate", "is %q; only breakdown_percent depends on the substrate", clip(v.Substrate))
			continue
		}
		l.c.values[m.ID] = append(l.c.values[m.ID], v)
	}
}

// take puts a value into the field it is of; false when that field knows no
// substrate.
func (m *Media) take(v Value) bool {
	if v.Substrate != "" {
		if v.Quantity == "breakdown_percent" {
			m.Breakdowns = append(m.Breakdowns, SubstrateBreakdown{v.Substrate, v.Likely})
		}
		return v.Quantity == "breakdown_percent"
	}
	switch v.Quantity {
	case "bulk_density_kg_m3":
		m.BulkDensityKgM3 = v.Likely
	case "breakdown_percent":
		m.BreakdownLowPercent, m.BreakdownPercent, m.BreakdownHighPercent = &v.Low, v.Likely, &v.High
	case "size_um":
		m.SizeLowUM, m.SizeHighUM = &v.Low, &v.High
	case "mohs":
		m.Mohs = &v.Likely
	case "breakdown_at_kpa":
		m.BreakdownAtKPa = &v.Likely
	case "strip_at_bore_mm":
		m.StripAtBoreMM = &v.Likely
	case "strip_at_kpa":
		m.StripAtKPa = &v.Likely
	case "strip_at_film_um":
		m.StripAtFilmUM = &v.Likely
	case "strip_rate_m2_h":
		m.StripRateLowM2H, m.StripRateM2H, m.StripRateHighM2H = &v.Low, &v.Likely, &v.High
	}
	return true
}

// media returns the abrasive a record is of, nil with a fault when there is none.
func (l *loader) media(r row) *Media {
	key := r.required("product")
	m, ok := l.c.byID[key].(*Media)
	if !ok && key != "" {
		r.fault("product", "there is no abrasive %q", clip(key))
	}
	return m
}

func (l *loader) operations() {
	seen := map[string]row{}
	for _, r := range l.rows("operations.csv") {
		v, ok := l.value(r, "rate_m2_h", "rate_m_h")
		o := Operation{ID: id(r, "id"), Name: r.required("name"), Rate: v, Basis: r.required("basis")}
		if o.Basis != "" && o.Basis != NozzleOn && o.Basis != Burdened {
			r.fault("basis", "is %q; it must be one of %s, %s", clip(o.Basis), NozzleOn, Burdened)
		}
		if once(seen, o.ID, r, "id", "operation") && ok {
			l.c.operations = append(l.c.operations, o)
		}
	}
}

package products

import (
	"slices"
	"strings"
)

// Actions are what a limit does to work that lies outside it.
func Actions() []string { return []string{"warn", "refuse"} }

// forbidden is the quantity of a limit that has no bounds.
const forbidden = "forbidden"

// mediaLimits reads the bounds for work with one product, or with any where the
// product is left out.
func (l *loader) mediaLimits() {
	seen := map[string]row{}
	for _, r := range l.rows("media_limits.csv") {
		limit := Limit{Quantity: quantity(r, "pressure_kpa", "skin_mm", "dwell_s", "total_dwell_s", "size_um", "standoff_mm", "grit", forbidden),
			Substrate: r.text("substrate"), Action: r.required("action"), Unit: r.text("unit"), Provenance: l.provenance(r)}
		if limit.Action != "" && !slices.Contains(Actions(), limit.Action) {
			r.fault("action", "is %q; it must be one of %s", clip(limit.Action), strings.Join(Actions(), ", "))
		}
		l.bounds(&limit, r)
		id := r.text("product")
		if _, known := l.c.byID[id]; id != "" && !known {
			r.fault("product", "there is no product %q", clip(id))
			continue
		}
		if once(seen, strings.Join([]string{id, limit.Quantity, limit.Substrate}, " "), r, "quantity", "limit") {
			l.c.limits[id] = append(l.c.limits[id], limit)
		}
	}
}

func (l *loader) bounds(limit *Limit, r row) {
	empty := r.text("low") == "" && r.text("high") == ""
	switch {
	case limit.Quantity == forbidden && !empty:
		r.fault("low", "is given, or high is; forbidden work has no bounds")
	case limit.Quantity == forbidden && limit.Substrate == "":
		r.fault("substrate", "is empty; say on what the work is forbidden")
	case limit.Quantity == forbidden:
	case empty:
		r.fault("low", "is empty, and high too; give at least one")
	default:
		limit.Low, limit.High = bounded(r, "low", limit.Quantity), bounded(r, "high", limit.Quantity)
		ordered(func(pointer, _, detail string) { r.fault(pointer[1:], "%s", detail) }, []rung{{"low", limit.Low}, {"high", limit.High}})
	}
}

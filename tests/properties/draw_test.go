// Package properties checks what must hold for every job, with jobs drawn at
// random: identities of addition and of scale, and what no change may do. No
// value here is published; every check is an identity.
package properties

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/products"
)

// object is a JSON object; drawing documents and not structs goes the way that
// users go.
type object map[string]any

// with returns a copy with members replaced; nil takes a member out.
func (o object) with(members object) object {
	copied := object{}
	for name, value := range o {
		copied[name] = value
	}
	for name, value := range members {
		if copied[name] = value; value == nil {
			delete(copied, name)
		}
	}
	return copied
}

type bench struct {
	t         *testing.T
	catalogue *products.Catalogue
	reader    *estimate.Reader
}

func newBench(t *testing.T) bench {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	return bench{t: t, catalogue: catalogue, reader: estimate.NewReader(nil)}
}

// run works a document out; every document drawn here is without fault.
func (b bench) run(t *rapid.T, job object) *estimate.Estimate {
	text, err := json.Marshal(job)
	require.NoError(t, err)
	e, err := b.reader.Estimate(text, b.catalogue)
	require.NoError(t, err, string(text))
	return e
}

func text(t *rapid.T, e *estimate.Estimate) string {
	encoded, err := json.Marshal(e)
	require.NoError(t, err)
	return string(encoded)
}

func length(low, high float64) *rapid.Generator[float64] { return rapid.Float64Range(low, high) }

// shape draws a shape; what it returns gives the same shape k times as large,
// and the names of its faces.
func shape(t *rapid.T, label string) (func(k float64) object, []string) {
	draw := func(name string, low, high float64) float64 { return length(low, high).Draw(t, label+name) }
	a, b, c := draw("a", 0.2, 4), draw("b", 0.2, 2), draw("c", 0.2, 2)
	thickness := draw("thickness", 0.02, 0.2)
	switch rapid.SampledFrom([]string{"box", "cylinder", "sphere", "panel", "wing", "body", "frustum", "measured"}).Draw(t, label+"kind") {
	case "box":
		return func(k float64) object {
			return object{"kind": "box", "length_m": a * k, "width_m": b * k, "height_m": c * k}
		}, []string{"top", "bottom", "left", "right", "front", "back"}
	case "cylinder":
		return func(k float64) object {
			return object{"kind": "cylinder", "radius_m": b * k, "length_m": a * k, "ends": 1}
		}, []string{"side", "end_1"}
	case "sphere":
		return func(k float64) object { return object{"kind": "sphere", "diameter_m": a * k} }, []string{"outside"}
	case "panel":
		return func(k float64) object {
			return object{"kind": "panel", "width_m": a * k, "height_m": b * k, "sides": 2,
				"holes": []any{object{"diameter_m": 0.05 * k, "x_m": 0.1 * k, "y_m": 0.1 * k}}}
		}, []string{"front", "back"}
	case "wing":
		return func(k float64) object {
			return object{"kind": "wing", "section": "naca", "root_chord_m": b * k, "tip_chord_m": b * k / 2, "span_m": a * k, "root_thickness_ratio": thickness, "tip": "capped"}
		}, []string{"upper", "lower", "tip"}
	case "body":
		return func(k float64) object {
			return object{"kind": "body", "nose": "point", "tail": "flat", "stations": []any{object{"x_m": 0},
				object{"x_m": 0.4 * a * k, "width_m": b * k, "height_m": c * k}, object{"x_m": a * k, "width_m": b * k / 2, "height_m": c * k / 2}}}
		}, []string{"left", "right", "tail"}
	case "frustum":
		return func(k float64) object {
			return object{"kind": "frustum", "radius_1_m": b * k, "radius_2_m": c * k, "length_m": a * k, "ends": 2}
		}, []string{"side", "end_1", "end_2"}
	}
	return func(k float64) object { return object{"kind": "measured", "area_m2": a * k * k, "edge_m": b * k} }, []string{"surface"}
}

// parts draws some components, k times as large as drawn.
func parts(t *rapid.T) func(k float64) []any {
	n := rapid.IntRange(1, 4).Draw(t, "parts")
	list := make([]func(k float64) object, n)
	for i := range list {
		id := fmt.Sprintf("part-%d", i)
		form, faces := shape(t, id)
		count := rapid.IntRange(1, 5).Draw(t, id+"count")
		film := rapid.SampledFrom([]float64{0, 120, 300}).Draw(t, id+"film")
		extra := rapid.SampledFrom([]float64{0, 3}).Draw(t, id+"extra")
		opened := rapid.Bool().Draw(t, id+"opened")
		list[i] = func(k float64) object {
			part := object{"id": id, "shape": form(k), "count": count, "substrate": "aluminium", "existing_film_um": film, "extra_area_percent": extra}
			if opened {
				part["openings"] = []any{object{"face": faces[0], "area_m2": 0.004 * k * k, "edge_m": 0.3 * k}}
			}
			return part
		}
	}
	return func(k float64) []any {
		made := make([]any, n)
		for i, part := range list {
			made[i] = part(k)
		}
		return made
	}
}

func names(components []any) []any {
	ids := make([]any, len(components))
	for i, c := range components {
		ids[i] = c.(object)["id"]
	}
	return ids
}

// steps draws some operations on a selection, in any order.
func steps(t *rapid.T, on []any) []any {
	prices := []object{
		{"operation": "wash", "product": "detergent"},
		{"operation": "blast", "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 380, "strip_rate_m2_h": 3, "recovered": true},
		{"operation": "blast", "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 8},
		{"operation": "blast", "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 300, "recovered": true, "batch_passes": 8, "altitude_m": 400},
		{"operation": "blast", "media": "plastic-type-v", "nozzle_bore_mm": 12.7, "pressure_kpa": 240, "rate_basis": "burdened", "recovered": true, "charge_discarded": true, "working_charge_kg": 40},
		{"operation": "blast", "media": "steel-shot", "nozzle_bore_mm": 9.5, "pressure_kpa": 600, "rate_m2_h": 9, "nozzles": 2, "wind_m_s": 4, "approved_by": "the drawer", "hose_length_m": 20, "other_air_m3_min": 0.5},
		{"operation": "sand", "tool": "scraper"},
		{"operation": "sand", "product": "disc-150", "tool": "hand", "rate_basis": "burdened", "crew": 3},
		{"operation": "strip", "means": "water", "water_l_h": 600},
		{"operation": "strip", "product": "stripper", "wet_film_mm": 1, "coats": 2, "dwell_min": 20},
		{"operation": "strip", "product": "stripper", "coats": 2},
		{"operation": "sand", "product": "disc-80"},
		{"operation": "sand", "product": "disc-320", "scuff": true},
		{"operation": "pretreat", "product": "conversion-coat"},
		{"operation": "protect", "product": "temporary-protective"},
		{"operation": "mask"},
		{"operation": "coat", "product": "epoxy-primer", "dry_film_um": 20, "method": "hvlp", "loss_percent": 10},
		{"operation": "coat", "product": "polyurethane-gloss-white", "dry_film_um": 45, "coats": 2, "method": "roller", "thinner_percent": 8},
		{"operation": "coat", "product": "epoxy-primer-waterborne", "dry_film_um": 20, "method": "hvlp", "part_size": "edges", "gun_loss_l": 0.05, "hose_m": 3, "hose_bore_mm": 8, "cup_l": 0.6, "cleaning_l": 0.4, "temperature_c": 28, "film_rule": "min_90_10", "film_cov_ratio": 0.15},
		{"operation": "coat", "product": "polyurethane-gloss-blue", "dry_film_um": 50, "method": "airless", "recoat": "missed", "thinner_percent": 4},
		{"operation": "coat", "product": "epoxy-primer-high-build", "dry_film_um": 70, "method": "conventional", "gap_h": 200, "loss_percent": 5},
		{"operation": "coat", "product": "polyurethane-gloss-orange", "dry_film_um": 50, "method": "brush", "labour": "paid", "mask": false},
		{"operation": "mark", "markings": []any{"roundel"}, "dry_film_um": 30, "method": "brush", "labour": "contract"},
	}
	chosen := rapid.SliceOfN(rapid.SampledFrom(prices), 1, 7).Draw(t, "steps")
	list := make([]any, len(chosen))
	for i, step := range chosen {
		s := step.with(object{"id": fmt.Sprintf("step-%d", i), "setup_h": rapid.SampledFrom([]float64{0, 1.5}).Draw(t, "setup"), "crew": rapid.IntRange(1, 3).Draw(t, "crew")})
		if s["operation"] != "mark" {
			s["on"] = on
		}
		list[i] = s
	}
	return list
}

// anyJob draws a whole job.
func anyJob(t *rapid.T) object {
	components := parts(t)(1)
	return object{
		"name": "Drawn at random", "currency": rapid.SampledFrom([]string{"USD", "EUR", "JPY"}).Draw(t, "currency"),
		"components": components, "steps": steps(t, names(components)),
		"markings": []any{object{"id": "roundel", "kind": "roundel", "size_m": 0.4, "count": 2,
			"rings": []any{object{"ratio": 1, "colour": "orange"}, object{"ratio": 2, "colour": "white"}, object{"ratio": 3, "colour": "green"}}}},
		"items": []any{
			object{"id": "hire", "amount": fmt.Sprintf("%d.%02d", rapid.IntRange(0, 5000).Draw(t, "hire"), rapid.IntRange(0, 99).Draw(t, "cents")), "category": rapid.SampledFrom([]string{"hire", "materials", "labour", "customs", "contingency"}).Draw(t, "category")},
			object{"id": "room", "amount": "410.05", "funding": "in_kind"},
		},
		"labour":              object{"volunteer_rate": "23.17", "paid_rate": "41.49", "contract_rate": "77.77"},
		"contingency_percent": length(0, 30).Draw(t, "contingency"), "tax_percent": rapid.SampledFrom([]float64{0, 7.7, 20}).Draw(t, "tax"),
		"allowance_percent": rapid.SampledFrom([]float64{0, 10, 33}).Draw(t, "allowance"),
	}
}

package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
)

// thomsen is Thomsen's formula for the area of an ellipsoid, as published.
func thomsen(a, b, c float64) float64 {
	const p = 1.6075
	a, b, c = math.Pow(a, p), math.Pow(b, p), math.Pow(c, p)
	return 4 * math.Pi * math.Pow((a*b+a*c+b*c)/3, 1/p)
}

func abs(v float64) float64 { return math.Abs(v) }

// TestGeometryG2Ellipses checks the rim of half an ellipsoid and, by an
// independent way through this program, the open end of a body.
func TestGeometryG2Ellipses(t *testing.T) {
	for _, c := range []struct {
		id         string
		a, b, want float64
		body       float64 // relative tolerance of the body's quadrature
	}{
		{"G2.01", 2, 1, 9.6884482205477, 1e-12},
		{"G2.02", 3, 1, 13.364893220555, 1e-12},
		{"G2.03", 5, 1, 21.010044539689, 1e-12},
		{"G2.04", 10, 1, 40.639741801009, 1e-12},
		{"G2.05", 50, 0.5, 400.10983297227 / 2, 1e-9}, // printed for 100, 1; half of it keeps within the limits of a body
		{"G2.07", 1.87, 1.95, 12.002199823113, 1e-12},
	} {
		t.Run(c.id, func(t *testing.T) {
			dome, err := surfaces.Measure(&surfaces.Ellipsoid{AM: 1, BM: c.a, CM: c.b, Part: "half"})
			require.NoError(t, err)
			assert.InEpsilon(t, c.want, dome.EdgeM(), exact, "4a·E(m), computed, A")
			assert.InEpsilon(t, c.want, prism(t, c.a, c.b, 2), c.body, "loft of one section, computed, A")
		})
	}
}

// prism returns the side area of a body of one section and length 1, which is
// the section's perimeter (identity).
func prism(t *testing.T, a, b, exponent float64) float64 {
	t.Helper()
	station := surfaces.Station{WidthM: 2 * a, HeightM: 2 * b, Exponent: &exponent}
	next := station
	next.XM = 1
	return areaOf(t, &surfaces.Body{Stations: []surfaces.Station{station, next}, Nose: "open", Tail: "open"}, "")
}

func TestGeometryG2Superellipses(t *testing.T) {
	for _, c := range []struct {
		id            string
		a, b, n, want float64
	}{
		{"G2.08 n 1.5", 1, 1, 1.5, 5.9393614345768},
		{"G2.08 n 2.5", 1, 1, 2.5, 6.5467047229648},
		{"G2.08 n 3", 1, 1, 3, 6.7449931401263},
		{"G2.08 n 4", 1, 1, 4, 7.0176979435640},
		{"G2.08 n 8", 1, 1, 8, 7.4779738524845},
		{"G2.09 n 2.5", 1.2, 0.8, 2.5, 6.5965933328646},
		{"G2.09 n 3", 1.2, 0.8, 3, 6.7862934139043},
		{"G2.10 n 1", 1, 1, 1, 4 * math.Sqrt2},
		{"G2.10 n 2", 1, 1, 2, 2 * math.Pi},
	} {
		t.Run(c.id, func(t *testing.T) {
			assert.InEpsilon(t, c.want, prism(t, c.a, c.b, c.n), exact, "computed, A")
		})
	}
}

func TestGeometryG2RoundedOutlines(t *testing.T) {
	edge := func(p *surfaces.Panel) float64 {
		p.Sides = 1
		m, err := surfaces.Measure(p)
		require.NoError(t, err)
		return m.EdgeM()
	}
	assert.InEpsilon(t, 5.9707963267949, edge(&surfaces.Panel{WidthM: num(2), HeightM: num(1.2), CornerRadiusM: num(0.25)}), exact, "G2.11, computed, A")
	flatOval := &surfaces.Panel{WidthM: num(0.050), HeightM: num(0.020), CornerRadiusM: num(0.010)}
	assert.InEpsilon(t, 0.1228318530718, edge(flatOval), exact, "G2.12, computed, A")
	assert.InEpsilon(t, 0.13807867557399, prism(t, 0.030, 0.012, 2), exact, "G2.13 streamline strut, computed, A")
}

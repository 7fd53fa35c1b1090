package climate

import "fmt"

// RecoatTime is when the next coat may go on, for a range of temperature of the
// surface, as a data sheet lists it.
type RecoatTime struct {
	FromC, ToC float64
	LeastH     *float64 // nil where it is not printed
	MostH      float64
}

// RecoatAt finds the row of a table for a surface temperature. Between two rows
// the warmer one holds; beyond the table there is none.
func RecoatAt(table []RecoatTime, surface float64) (RecoatTime, bool) {
	if len(table) == 0 || surface < table[0].FromC {
		return RecoatTime{}, false
	}
	for _, row := range table {
		if surface <= row.ToC {
			return row, true
		}
	}
	return RecoatTime{}, false
}

// recoat finds the times to the next coat: the least at the surface as it is,
// the most at the hottest temperature that lasts an hour before that coat, for
// one hot hour ends the window.
//
// Source: UFGS 09971, highest surface temperature sustained for an hour or more
// over the whole interval (reference planning C08).
func (d DewPoint) recoat(r *DewPointResult) {
	if d.HottestSurfaceC == nil {
		return
	}
	if len(d.Recoat) == 0 {
		r.Warnings = append(r.Warnings, "hottest_surface_c is given, and no product whose times to the next coat are known: name one that has recoat")
		return
	}
	if d.SurfaceC != nil {
		if row, found := RecoatAt(d.Recoat, *d.SurfaceC); found {
			r.RecoatLeastH = row.LeastH
		}
	}
	row, found := RecoatAt(d.Recoat, *d.HottestSurfaceC)
	if !found {
		r.Warnings = append(r.Warnings, fmt.Sprintf("the times to the next coat of %s are not known at %.3g °C; they are for %.3g to %.3g °C", d.Product, *d.HottestSurfaceC, d.Recoat[0].FromC, d.Recoat[len(d.Recoat)-1].ToC))
		return
	}
	r.RecoatMostH = &row.MostH
}

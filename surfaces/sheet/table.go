package sheet

import (
	"strconv"

	"filmbuild/surfaces/placing"
)

// table writes what to lay out, one row to a marking: point, coordinates, turn,
// distances, error; in columns where there is room for them, or in words.
func (d *board) table(b *block) {
	heads := []string{"marking", "point", "x", "y", "turned", "± error", "worst"}
	var rows [][]string
	for _, p := range d.all {
		f := p.Fix
		turned := significant(f.RotationDeg)
		if f.RotationDeg < 0 {
			turned = "−" + significant(-f.RotationDeg)
		}
		rows = append(rows, []string{p.Name, words(f.Anchor), d.look.tenth(f.XM), d.look.tenth(f.YM), turned + "°", d.look.tenth(f.ErrorM), d.look.tenth(f.WorstShiftM)})
	}
	widths := make([]float64, len(heads))
	total := 0.0
	for k, head := range heads {
		widths[k] = d.width(head)
		for _, r := range rows {
			widths[k] = max(widths[k], d.width(r[k]))
		}
		widths[k] += d.h * 1.2
		total += widths[k]
	}
	if total > b.right-b.left {
		for i, r := range rows {
			b.row(r[0] + ": " + r[1] + " at x " + r[2] + ", y " + r[3] + ", turned " + r[4] + "; ± " + r[5] + ", at worst " + r[6])
			b.row(taped(d.all[i].Fix, d.look))
		}
		return
	}
	b.cells(heads, widths, true)
	for i, r := range rows {
		b.cells(r, widths, false)
		if text := taped(d.all[i].Fix, d.look); text != "" {
			in := block{paper: b.paper, left: b.left + 1.5*b.h, right: b.right, y: b.y}
			in.row(text)
			b.y = in.y
		}
	}
}

// cells writes one row of cells, names at the left and figures at the right of
// their columns.
func (b *block) cells(texts []string, widths []float64, bold bool) {
	b.y += b.h * leading
	x := b.left
	for k, cell := range texts {
		if k < 2 {
			b.text(x, b.y, cell, place{bold: bold})
		} else {
			b.text(x+widths[k]-1.2*b.h, b.y, cell, place{anchor: "end", bold: bold})
		}
		x += widths[k]
	}
}

// taped tells what a place is measured from, in words.
func taped(f placing.Fix, look Look) string {
	if s := f.Station; s != nil {
		return "station " + look.tenth(s.StationM) + ", butt line " + look.tenth(s.ButtLineM) + ", water line " + look.tenth(s.WaterLineM) + ", from " + s.Datum
	}
	var parts []string
	for i, m := range f.Measures {
		parts = append(parts, strconv.Itoa(i+1)+") "+look.tenth(m.DistanceM)+" from "+m.From)
	}
	return list(parts)
}

package surfaces

import "filmbuild/surfaces/planar"

// straight is the outline with straight sides through points in order,
// counter-clockwise whichever way they were listed, so that outlines unite.
func straight(points [][2]float64) planar.Outline {
	o := make(planar.Outline, len(points))
	for i, p := range points {
		o[i].At = planar.Point{X: p[0], Y: p[1]}
	}
	if o.SignedArea() < 0 {
		return o.Reversed()
	}
	return o
}

// roundedRectangle is centred on x, y; the corner radius is at most half of
// the smaller side.
func roundedRectangle(x, y, width, height, corner float64) planar.Outline {
	return planar.RoundedRectangle(planar.Point{X: x - width/2, Y: y - height/2}, planar.Point{X: x + width/2, Y: y + height/2}, corner)
}

// The colours by which the figures of a panel are told apart.
const (
	sheet  = "sheet"
	cutout = "cutout"
)

// layout is what one sees of figures laid on each other, the later above.
// Outlines that passed their checks cannot fail.
func layout(layers ...planar.Layer) (*planar.Arrangement, error) { return planar.Arrange(layers) }

// extent returns the area of one figure and the length of its border.
func extent(figure planar.Region) (area, border float64) {
	seen, err := layout(planar.Layer{Colour: sheet, Outline: figure})
	if err != nil {
		return 0, 0
	}
	for _, a := range seen.Areas() {
		area += a.Area
	}
	for _, l := range seen.Lengths() {
		border += l.Length
	}
	return area, border
}

// touching is what two figures, one laid over the other, have in common.
type touching struct {
	over   bool           // the upper one reaches beyond the lower one
	meets  bool           // they overlap or their borders touch
	beyond []planar.Point // ends of the pieces that make it so
}

// compare lays the upper figure over the lower one. Where two borders touch or
// cross, the arrangement has a point that is an end of pieces of both.
func compare(lower, upper planar.Region) (touching, error) {
	seen, err := layout(planar.Layer{Colour: sheet, Outline: lower}, planar.Layer{Colour: cutout, Outline: upper})
	if err != nil {
		return touching{}, err
	}
	pieces := seen.Pieces()
	rim, hidden := map[planar.Point]bool{}, true // rim of the lower figure against the ground
	t := touching{}
	for _, p := range pieces {
		lower := p.Left == sheet || p.Right == sheet
		ground := p.Left == planar.Base || p.Right == planar.Base
		hidden = hidden && !lower
		switch {
		case !lower:
			t.beyond = append(t.beyond, p.From, p.To)
		case ground:
			rim[p.From], rim[p.To] = true, true
		default:
			t.meets = true
		}
	}
	for _, p := range pieces {
		if (p.Left != cutout && p.Right != cutout) || !rim[p.From] && !rim[p.To] {
			continue
		}
		t.meets = true
		if p.Left == sheet || p.Right == sheet { // touches the rim from inside
			t.beyond = append(t.beyond, p.From, p.To)
		}
	}
	t.meets = t.meets || hidden
	t.over = len(t.beyond) > 0
	return t, nil
}

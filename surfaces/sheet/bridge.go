package sheet

import (
	"math"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// bridgeWidth is a twentieth of the width of the island that a bridge holds, from
// 3 mm to 10 mm, and at most a quarter of a small island (common practice; no
// public rule was found).
func bridgeWidth(island float64) float64 {
	return min(max(island/20, 0.003), 0.010, island/4)
}

// bridged cuts bridges across a colour, straight up and down from every island,
// so that the film stays in one piece. left is how many islands could not be
// held.
//
// Two bridges to an island are common practice.
func bridged(lines []planar.Outline) (out []planar.Outline, left int, err error) {
	region := planar.Region(lines)
	boxes := make([]planar.Box, len(lines))
	for i, o := range lines {
		boxes[i] = planar.Region{o}.Box()
	}
	var cuts planar.Region
	for i, o := range lines {
		if o.SignedArea() < 0 {
			if bridge := bridgeOf(boxes[i], near(lines, boxes, boxes[i])); bridge != nil {
				cuts = append(cuts, bridge)
			} else {
				left++
			}
		}
	}
	if len(cuts) == 0 {
		return lines, left, nil
	}
	a, err := planar.Arrange([]planar.Layer{{Colour: "cut", Outline: region}, {Colour: planar.Base, Outline: cuts}})
	if err != nil {
		return nil, 0, err
	}
	for _, l := range a.Loops() {
		out = append(out, joined(l.Outline))
	}
	left = 0
	for _, h := range a.Holes() {
		left += h.Holes
	}
	return out, left, nil
}

// bridgeOf is a strip up and down through the island in a box and the colour
// beside it; nil where the island leaves no room for one.
func bridgeOf(box planar.Box, about planar.Region) planar.Outline {
	half := bridgeWidth(box.Width()) / 2
	a, err := planar.Arrange([]planar.Layer{{Colour: "cut", Outline: about}})
	if err != nil {
		return nil
	}
	for _, share := range []float64{0.5, 0.35, 0.65, 0.2, 0.8} {
		x := box.Min.X + share*box.Width()
		up, down, good := math.Inf(-1), math.Inf(1), true
		for _, at := range []float64{x - half, x, x + half} {
			high, low, found := marking.BridgeReach(a.Across(at), box, 2*half)
			up, down, good = max(up, high), min(down, low), good && found
		}
		if good {
			return planar.Rectangle(planar.Point{X: x - half, Y: down}, planar.Point{X: x + half, Y: up})
		}
	}
	return nil
}

// near are the lines that a bridge from the island in a box may meet: those above
// and below it as far as what it is cut out of reaches, and a little beyond.
func near(lines []planar.Outline, boxes []planar.Box, box planar.Box) planar.Region {
	reach := box
	for _, b := range boxes {
		if b.Min.X <= box.Min.X && b.Max.X >= box.Max.X && b.Min.Y <= box.Min.Y && b.Max.Y >= box.Max.Y {
			reach.Min.Y, reach.Max.Y = min(reach.Min.Y, b.Min.Y), max(reach.Max.Y, b.Max.Y)
		}
	}
	beyond := 2 * bridgeWidth(box.Width())
	var out planar.Region
	for i, o := range lines {
		b := boxes[i]
		if b.Min.X <= box.Max.X && b.Max.X >= box.Min.X && b.Min.Y <= reach.Max.Y+beyond && b.Max.Y >= reach.Min.Y-beyond {
			out = append(out, o)
		}
	}
	return out
}

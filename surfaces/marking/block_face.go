package marking

import "filmbuild/surfaces/planar"

// letter is one letter of height 1, with the width that spacing counts from and
// to, and the way to the next letter by the font itself.
type letter struct {
	outline     planar.Region
	left, right float64
	advance     float64
}

// Of the grid: see block_letters.csv.
const (
	gridHeight = 6.0
	gridWidth  = 4.0 // of all letters but 1, I, M and W
)

// blockLetter is a letter of the block alphabet under a rule. The grid is
// stretched piece by piece, so that upright and level strokes get the rule's
// width; a slanting stroke has it under the registration rules, whose grid is
// the alphabet's own, and comes near it under the others.
func blockLetter(r rune, rule letterRule, wide bool) (letter, bool) {
	letters, err := blockAlphabet()
	if err != nil || letters[r] == nil {
		return letter{}, false
	}
	width := rule.widthOf(r, wide)
	form := letters[r][0]
	if last := letters[r][len(letters[r])-1]; last.width/gridHeight <= width*(1+1e-9) {
		form = last
	}
	across, up := gridStops(form.width, width, rule.stroke), gridStops(gridHeight, 1, rule.stroke)
	out := letter{right: width, advance: width + rule.gap}
	for _, part := range form.parts {
		moved := make(planar.Outline, len(part))
		for i, c := range part {
			moved[i].At = planar.Point{X: stretched(c.At.X, across), Y: stretched(c.At.Y, up)}
		}
		out.outline = append(out.outline, moved)
	}
	return out, true
}

// stop says where a line of the grid goes.
type stop struct{ from, to float64 }

// gridStops are the sides of the strokes at both ends and in the middle.
func gridStops(cells, size, stroke float64) []stop {
	if cells == 1 {
		return []stop{{0, 0}, {1, size}}
	}
	return []stop{
		{0, 0}, {1, stroke},
		{cells/2 - 0.5, (size - stroke) / 2}, {cells/2 + 0.5, (size + stroke) / 2},
		{cells - 1, size - stroke}, {cells, size},
	}
}

func stretched(x float64, stops []stop) float64 {
	for i := 1; i < len(stops); i++ {
		a, b := stops[i-1], stops[i]
		if x <= b.from || i == len(stops)-1 {
			return a.to + (x-a.from)*(b.to-a.to)/(b.from-a.from)
		}
	}
	return x
}

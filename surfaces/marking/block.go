package marking

import (
	"cmp"
	"slices"

	"filmbuild/surfaces/planar"
)

// block is a part of a figure that meets no other part of it, in every place
// where it stands.
type block struct {
	layers []planar.Layer
	at     []planar.Point
}

// blocked is a figure that consists of blocks, such as the letters of a text.
type blocked interface{ blocks() []block }

// Arrange works out what is seen of a figure that Check passed. Parts that stand
// apart are worked out once, however often they stand.
func Arrange(f Figure) (*planar.Arrangement, error) {
	apart, ok := f.(blocked)
	if !ok {
		return planar.Arrange(f.Layers())
	}
	var copies []planar.Copies
	for _, b := range apart.blocks() {
		one, err := planar.Arrange(b.layers)
		if err != nil {
			return nil, err
		}
		copies = append(copies, planar.Copies{Of: one, At: b.at})
	}
	return planar.Together(copies)
}

// spread lays all copies of blocks out: the lowest layers of all first.
func spread(blocks []block) []planar.Layer {
	var layers []planar.Layer
	for _, b := range blocks {
		for i, l := range b.layers {
			if i == len(layers) {
				layers = append(layers, planar.Layer{Colour: l.Colour})
			}
			for _, at := range b.at {
				layers[i].Outline = append(layers[i].Outline, planar.Placement{Scale: 1, Shift: at}.Region(l.Outline)...)
			}
		}
	}
	return layers
}

// letterBlocks gathers the places of each letter; letters whose boxes meet
// become one block. dress turns a letter's outline, of height 1, into layers.
func letterBlocks(places []place, height float64, dress func(of rune, outline planar.Region) []planar.Layer) []block {
	real := planar.Placement{Scale: height}
	number := map[rune]int{}
	var blocks []block
	for _, group := range meeting(places) {
		if len(group) == 1 {
			p := places[group[0]]
			k, known := number[p.of]
			if !known {
				k = len(blocks)
				number[p.of] = k
				blocks = append(blocks, block{layers: real.Layers(dress(p.of, p.outline))})
			}
			blocks[k].at = append(blocks[k].at, real.Point(p.at))
			continue
		}
		b := block{at: []planar.Point{{}}}
		for _, i := range group {
			moved := planar.Placement{Scale: 1, Shift: places[i].at}
			for n, l := range moved.Layers(dress(places[i].of, places[i].outline)) {
				if n == len(b.layers) {
					b.layers = append(b.layers, planar.Layer{Colour: l.Colour})
				}
				b.layers[n].Outline = append(b.layers[n].Outline, l.Outline...)
			}
		}
		b.layers = real.Layers(b.layers)
		blocks = append(blocks, b)
	}
	return blocks
}

// near is the distance under which letters are taken together, as a part of
// their height.
const near = 0.01

// meeting groups letters whose boxes come near each other.
func meeting(places []place) [][]int {
	boxes := make([]planar.Box, len(places))
	own := map[rune]planar.Box{}
	order := make([]int, len(places))
	for i, p := range places {
		box, known := own[p.of]
		if !known {
			box = p.outline.Box()
			own[p.of] = box
		}
		move := func(q planar.Point) planar.Point { return planar.Point{X: q.X + p.at.X, Y: q.Y + p.at.Y} }
		boxes[i], order[i] = planar.Box{Min: move(box.Min), Max: move(box.Max)}, i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(boxes[i].Min.X, boxes[j].Min.X), cmp.Compare(i, j))
	})
	group := make([]int, len(places))
	for i := range group {
		group[i] = i
	}
	root := func(i int) int {
		for group[i] != i {
			i = group[i]
		}
		return i
	}
	var open []int
	for _, i := range order {
		kept := open[:0]
		for _, j := range open {
			if boxes[j].Max.X+near < boxes[i].Min.X {
				continue
			}
			kept = append(kept, j)
			if boxes[j].Min.Y <= boxes[i].Max.Y+near && boxes[i].Min.Y <= boxes[j].Max.Y+near {
				a, b := root(i), root(j)
				group[max(a, b)] = min(a, b)
			}
		}
		open = append(kept, i)
	}
	number := map[int]int{}
	var out [][]int
	for i := range places {
		g := root(i)
		if _, known := number[g]; !known {
			number[g] = len(out)
			out = append(out, nil)
		}
		out[number[g]] = append(out[number[g]], i)
	}
	return out
}

package marking

import "filmbuild/surfaces/quantity"

// Kind describes one kind of figure for the catalogue.
type Kind struct {
	Name    string
	Doc     string // what it is and by which ratios it is drawn
	Source  string // of the ratios
	Fields  []quantity.Field
	Example Figure // invented sizes
}

// kind is one row of the list of kinds.
type kind struct {
	name, doc, source string
	make              func() Figure // with the defaults set
	example           func() Figure
}

// New returns a pointer to the struct of a kind with its defaults set, and
// false for a kind that does not exist.
func New(name string) (Figure, bool) {
	for _, k := range kinds() {
		if k.name == name {
			return k.make(), true
		}
	}
	return nil, false
}

// Kinds lists every kind, in a fixed order.
func Kinds() []Kind {
	var list []Kind
	for _, k := range kinds() {
		list = append(list, Kind{k.name, k.doc, k.source, quantity.Describe(k.make()), k.example()})
	}
	return list
}

// sourceOf returns the source of a kind's ratios.
func sourceOf(name string) string {
	for _, k := range kinds() {
		if k.name == name {
			return k.source
		}
	}
	return "identity"
}

const identity = "identity: plane geometry"

func kinds() []kind {
	return []kind{
		{
			"star", "a regular five-pointed star, one point up; the inner corners lie at 1/φ² = 0.382 of the radius", identity,
			func() Figure { return newStar() },
			func() Figure { f := newStar(); f.SizeM, f.Colour = 0.5, "white"; return f },
		},
		{
			"star_and_bar", "a white star in a blue circle with a white bar on each side, R long and R/2 high, a red stripe of R/6 in it, and a blue border of R/8 all round; R is half the size",
			sourceStarAndBar,
			func() Figure { return newStarAndBar() },
			func() Figure { f := newStarAndBar(); f.SizeM = 0.635; return f },
		},
		{
			"roundel", "discs of one centre; each ring's diameter goes as its ratio, the last is the size", identity,
			func() Figure { return newRoundel() },
			func() Figure {
				f := newRoundel()
				f.SizeM, f.Rings = 0.4, []RoundelRing{{1, "orange"}, {2, "white"}, {3, "green"}}
				return f
			},
		},
		{
			"stripe", "a straight stripe, of one width or tapering to another", identity,
			func() Figure { return newStripe() },
			func() Figure {
				f, end := newStripe(), 0.05
				f.LengthM, f.WidthM, f.EndWidthM, f.Colour = 8, 0.25, &end, "green"
				return f
			},
		},
		{
			"rectangle", "a rectangle, with rounded corners if wanted", identity,
			func() Figure { return newRectangle() },
			func() Figure {
				f := newRectangle()
				f.WidthM, f.HeightM, f.CornerRadiusM, f.Colour = 0.3, 0.12, 0.02, "yellow"
				return f
			},
		},
	}
}

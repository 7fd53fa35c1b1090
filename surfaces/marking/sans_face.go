package marking

import (
	"errors"
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"filmbuild/surfaces/planar"
)

// The sans letters are the outlines of two open fonts embedded in a library,
// copyright 2016 Bigelow & Holmes Inc., which may be used and passed on in
// source and binary form, with or without changes, under the BSD-style licence
// that comes with them. They are read in the font's own units without hinting,
// and their quadratic curves are kept as they are. The reader cuts points that
// the font only implies to whole units, which moves areas by up to 4e-4.
var (
	sansRegular = sync.OnceValues(func() (*sansFont, error) { return readSans(goregular.TTF) })
	sansBold    = sync.OnceValues(func() (*sansFont, error) { return readSans(gobold.TTF) })
)

type sansFont struct {
	font  *sfnt.Font
	units fixed.Int26_6 // per em
	cap   float64       // height of capitals in units
}

func readSans(data []byte) (*sansFont, error) {
	f, err := sfnt.Parse(data)
	if err != nil {
		return nil, err
	}
	s := &sansFont{font: f, units: fixed.I(int(f.UnitsPerEm()))}
	var buffer sfnt.Buffer
	m, err := f.Metrics(&buffer, s.units, font.HintingNone)
	if err != nil {
		return nil, err
	}
	if m.CapHeight <= 0 {
		return nil, errors.New("the font has no height of capitals")
	}
	s.cap = float64(m.CapHeight) / 64
	return s, nil
}

func sansOf(bold bool) (*sansFont, error) {
	if bold {
		return sansBold()
	}
	return sansRegular()
}

// letter is the outline of a letter at a cap height of 1; false if the font
// lacks it.
func (s *sansFont) letter(r rune) (letter, bool, error) {
	var buffer sfnt.Buffer
	index, err := s.font.GlyphIndex(&buffer, r)
	if err != nil || index == 0 {
		return letter{}, false, err
	}
	advance, err := s.font.GlyphAdvance(&buffer, index, s.units, font.HintingNone)
	if err != nil {
		return letter{}, false, err
	}
	segments, err := s.font.LoadGlyph(&buffer, index, s.units, nil)
	if err != nil {
		return letter{}, false, fmt.Errorf("letter %q: %w", r, err)
	}
	out := letter{advance: float64(advance) / 64 / s.cap, outline: s.region(segments)}
	if len(out.outline) > 0 {
		box := out.outline.Box()
		out.left, out.right = box.Min.X, box.Max.X
	}
	return out, true, nil
}

// region turns the contours of a glyph into outlines. The font's y runs down
// here; both senses of rotation are kept as they are, so counters stay holes.
func (s *sansFont) region(segments sfnt.Segments) planar.Region {
	point := func(p fixed.Point26_6) planar.Point {
		return planar.Point{X: float64(p.X) / 64 / s.cap, Y: -float64(p.Y) / 64 / s.cap}
	}
	var out planar.Region
	var at planar.Point
	for _, g := range segments {
		if g.Op == sfnt.SegmentOpMoveTo {
			at = point(g.Args[0])
			out = append(out, nil)
			continue
		}
		c := planar.Corner{At: at}
		switch g.Op {
		case sfnt.SegmentOpLineTo:
			at = point(g.Args[0])
		case sfnt.SegmentOpQuadTo:
			at = point(g.Args[1])
			c.Bend = planar.Quadratic(c.At, point(g.Args[0]), at)
		case sfnt.SegmentOpCubeTo:
			at = point(g.Args[2])
			c.Bend = &planar.Bend{First: point(g.Args[0]), Second: point(g.Args[1])}
		}
		if len(out) > 0 {
			out[len(out)-1] = append(out[len(out)-1], c)
		}
	}
	return out
}

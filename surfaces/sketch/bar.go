package sketch

import (
	"slices"

	"filmbuild/surfaces"
)

// drawBar shows the section of a bar with its dimensions, and a broken length
// of the bar beside it.
func drawBar(d *drawing, s *surfaces.Bar) {
	d.small = true // rolled sections are in mm throughout
	d.views = "Section of the bar, and the bar from the side"
	q := newProfiler(d, s.Profile)
	section := q.section()
	d.drawMain(outline, section.way)
	for _, list := range [][]callout{section.right, section.left} {
		for i, c := range list {
			if slices.Contains(s.HiddenFaces, c.text.face) {
				list[i].text.text += ", not painted"
			}
		}
	}
	left := d.column(section.left, -5, false)
	if len(section.left) == 0 {
		left = -firstDimension + 4
	}
	right := d.column(section.right, section.width+7, true)
	corner := point{section.width, 0}
	if s.Profile.DiameterMM != nil {
		d.level(point{0, -section.height / 2}, point{section.width, -section.height / 2}, firstDimension, diameter("diameter", *s.Profile.DiameterMM/1000))
	} else {
		d.upright(point{0, -section.height}, point{0, 0}, left-4, plain("height", *s.Profile.HeightMM/1000))
		d.level(point{0, 0}, corner, firstDimension+2, plain("width", *s.Profile.WidthMM/1000))
	}
	d.barLength(s, section, right+10)
}

// barLength draws the bar from the side, broken unless it is short.
func (d *drawing) barLength(s *surfaces.Bar, section barSection, x float64) {
	const room = 40.0 // mm
	long, broken := s.LengthM*d.k, false
	f := d.stretch(s.LengthM)
	if long *= f; long > room {
		long, broken = room, true
	}
	b := bounds{point{x, -section.height}, point{x + long, 0}}
	for _, y := range section.folds {
		if broken {
			m := b.middle().x
			d.line(edge, point{x, y}, point{m - breakGap, y})
			d.line(edge, point{m + breakGap, y}, point{x + long, y})
			continue
		}
		d.line(edge, point{x, y}, point{x + long, y})
	}
	d.bar(outline, b, broken, false, false)
	d.level(point{x, 0}, point{x + long, 0}, firstDimension+2, plain("length", s.LengthM).unless(broken || f != 1))
}

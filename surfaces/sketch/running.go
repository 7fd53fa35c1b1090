package sketch

import (
	"slices"

	"filmbuild/surfaces/spacing"
)

// leftOut is said where figures had no room.
const leftOut = "Some figures left out."

// mark is a place along the x axis with what is said of it.
type mark struct {
	x     float64  // on the sheet, mm
	from  float64  // height at which its line leaves the outline
	texts []string // one for each row
}

// Rows of turned text: how far apart their lines stand, how far the row begins
// from the outline, and how many fit beside each other on a sheet.
const (
	markPitch = 6.0
	rowStart  = 7.0
	mostMarks = 22
)

// rows writes turned texts above or below an outline at height y, one group for
// each name, joined to their places by lines. It returns where they end.
func (d *drawing) rows(names []string, marks []mark, y float64, up bool) float64 {
	marks = d.thinned(marks)
	want := make([]float64, len(marks))
	for i, m := range marks {
		want[i] = m.x
	}
	side := 1.0
	if up {
		side = -1
	}
	placed, start := spacing.Spread(want, markPitch), y+side*rowStart
	for i, m := range marks {
		d.draw(thin, d.path().move(point{m.x, m.from + side}).line(point{m.x, y + side*2}).
			line(point{placed[i], start - side*2}).line(point{placed[i], start}))
	}
	for row, name := range names {
		deep := 0.0
		for _, m := range marks {
			deep = max(deep, textWidth(m.texts[row]))
		}
		for i, m := range marks {
			if m.texts[row] == "" {
				continue
			}
			l := lettering{text: m.texts[row], class: dimensionText, upright: true, hang: atEnd}
			if up {
				l.hang = atStart
			}
			d.write(l, point{placed[i] + capital/2, start + side*(0.8+textWidth(l.text)/2)})
		}
		title := lettering{text: name, class: noteText}
		d.left(title, point{placed[0] - 4, start + side*(0.8+min(deep, 4)/2) + capital/2})
		start += side * (deep + 2.5)
	}
	return start
}

// thinned leaves out marks for which there is no room, the ends excepted.
func (d *drawing) thinned(marks []mark) []mark {
	slices.SortStableFunc(marks, func(a, b mark) int { return compare(a.x, b.x) })
	if len(marks) <= d.marks {
		return marks
	}
	d.sparse = true
	d.note(leftOut)
	kept := make([]mark, d.marks)
	for i := range kept {
		kept[i] = marks[i*(len(marks)-1)/(d.marks-1)]
	}
	return kept
}

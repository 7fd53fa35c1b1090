package sketch

import (
	"slices"
	"sort"
	"strings"
)

// The sheet, in mm.
const (
	sheetWidth  = 180.0
	sheetHeight = 120.0
	margin      = 3.0
	footRow     = 6.5 // each row below the drawing
)

// fitted draws a figure at the largest scale at which it fits the sheet, in the
// middle of the room that it has. Of several figures it takes the one that can
// be largest, the first of equals; one that leaves figures out must be several
// scales larger.
func fitted(figures []figure, system System) *drawing {
	list := scales()
	least, best, chosen := 0, trial{}, figures[0]
	for _, f := range figures {
		const several = 5
		trial := largest(f, list, system)
		rank := trial.place
		if trial.sparse {
			rank += several
		}
		if !trial.fits() {
			rank += len(list)
		}
		if best.drawing == nil || rank < least {
			least, best, chosen = rank, trial, f
		}
	}
	at := list[best.place]
	room, taken := best.room().middle(), best.taken.middle()
	d := newDrawing(at, system)
	d.at = point{room.x - taken.x, room.y - taken.y}
	chosen(d)
	return d
}

// trial is a figure laid out at one of the scales of a list.
type trial struct {
	*drawing
	place int
}

// largest lays a figure out at the first scale of a list at which it fits. The
// part itself takes less room at each smaller scale, so that halving finds
// where to begin; with its texts it does not, as they leave it when it is small,
// so that the rest is tried one by one. If nothing fits, it is the scale at
// which least stands out.
func largest(f figure, list []scale, system System) trial {
	start := sort.Search(len(list)-1, func(i int) bool {
		d := tried(f, list[i], system)
		return d.part.width() <= sheetWidth && d.part.height() <= sheetHeight
	})
	var found trial
	for i := start; i < len(list); i++ {
		d := tried(f, list[i], system)
		if found.drawing == nil || d.excess() < found.excess() {
			found = trial{d, i}
		}
		if d.fits() {
			break
		}
	}
	return found
}

// tried lays a figure out without drawing it.
func tried(f figure, s scale, system System) *drawing {
	d := newDrawing(s, system)
	d.trial = true
	f(d)
	return d
}

func newDrawing(s scale, system System) *drawing {
	return &drawing{lengths: lengths{system: system}, scale: s, k: s.perMetre(), taken: nowhere(), part: nowhere(), marks: mostMarks}
}

// room is where a figure may be: the sheet less its margins and its foot.
func (d *drawing) room() bounds {
	foot := footRow * float64(1+len(d.footNotes()))
	return bounds{point{margin, margin}, point{sheetWidth - margin, sheetHeight - margin - foot - 1}}
}

func (d *drawing) fits() bool { return d.excess() <= 0 }

// excess is how much a figure is too large for the room, in mm.
func (d *drawing) excess() float64 {
	r := d.room()
	return max(d.taken.width()-r.width(), d.taken.height()-r.height())
}

func (d *drawing) footNotes() []string {
	var rows []string
	for _, n := range d.notes {
		rows = append(rows, wrapped(n, sheetWidth-2*margin-4)...)
	}
	// Short notes share a row.
	var joined []string
	for _, r := range rows {
		if last := len(joined) - 1; last >= 0 && textWidth(joined[last]+"  "+r) <= sheetWidth-2*margin-4 {
			joined[last] += "  " + r
			continue
		}
		joined = append(joined, r)
	}
	return joined
}

// foot writes scale, scale bar, unit and notes below the figure.
func (d *drawing) foot() {
	d.at = point{}
	notes := d.footNotes()
	y := sheetHeight - margin - descent - footRow*float64(len(notes))
	write := func(text string, left, y float64) {
		d.right(lettering{text: text, class: noteText}, point{left, y})
	}
	write(d.scale.text(), margin, y)
	const barAt, high = 34.0, 1.6
	bar := d.scaleBar()
	long := bar.length * d.k
	b := bounds{point{barAt, y - capital/2 - high/2}, point{barAt + long, y - capital/2 + high/2}}
	d.draw(thin, d.path().rectangle(b, 0, 0))
	half := d.path().rectangle(bounds{b.low, point{b.low.x + long/2, b.high.y}}, 0, 0)
	d.fills = append(d.fills, `<path class="sketch-bar" d="`+string(half.text)+"\"/>\n"...)
	write(bar.text, barAt+long+2, y)
	unit := "dimensions in " + d.unit()
	d.left(lettering{text: unit, class: noteText}, point{sheetWidth - margin, y})
	for i, n := range notes {
		write(n, margin, y+footRow*float64(i+1))
	}
}

// document wraps the drawing up as an SVG document.
func (d *drawing) document(kind, prefix string) []byte {
	d.foot()
	title := strings.ToUpper(kind[:1]) + strings.ReplaceAll(kind[1:], "_", " ")
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" class="sketch" width="180mm" height="120mm" viewBox="0 0 180 120" role="img" aria-labelledby="` +
		prefix + `title ` + prefix + `desc" data-scale="` + d.scale.text() + `">` + "\n")
	b.WriteString(`<title id="` + prefix + `title">` + escaped(title+", scale "+d.scale.text()) + "</title>\n")
	b.WriteString(`<desc id="` + prefix + `desc">` + escaped(d.sentences()) + "</desc>\n")
	b.WriteString(`<g fill="none" stroke="currentColor" stroke-linejoin="round">` + "\n")
	b.WriteString(strings.ReplaceAll(string(d.lines), mainOutline, ` id="`+prefix+`outline"`))
	b.WriteString("</g>\n" + `<g fill="currentColor" stroke="none">` + "\n")
	b.Write(d.fills)
	b.WriteString("</g>\n" + `<g fill="currentColor" stroke="none" font-family="sans-serif" font-size="5" text-anchor="middle">` + "\n")
	b.Write(d.words)
	b.WriteString("</g>\n</svg>\n")
	return []byte(b.String())
}

// sentences say what is drawn, for those who cannot see it.
func (d *drawing) sentences() string {
	var said []string
	for _, s := range d.spoken {
		if !slices.Contains(said, s) {
			said = append(said, s)
		}
	}
	text := d.views + ". Dimensions: " + strings.Join(said, ", ") + "."
	if len(d.faces) > 0 {
		text += " Faces: " + strings.ReplaceAll(strings.Join(d.faces, ", "), "_", " ") + "."
	}
	return strings.Join(append([]string{text}, d.notes...), " ")
}

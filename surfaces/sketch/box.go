package sketch

import (
	"filmbuild/surfaces"
)

// viewGap is the distance between two views, mm.
const viewGap = 12.0

// drawBox shows a block from the left, from above and from the front.
func drawBox(d *drawing, s *surfaces.Box) {
	d.views = "Rectangular block from the left, from above and from the front"
	b := d.threeViews([3]float64{s.LengthM, s.WidthM, s.HeightM}, [3]string{"length", "width", "height"}, outline)
	d.within(b.side, b.side.low.y-4, d.face("left"), d.face("right"))
	d.within(b.front, b.front.low.y-4, d.face("front"), d.face("back"))
	d.beneath(b.plan, d.face("top"), d.face("bottom"))
}

// blockViews are where the three views of a block stand.
type blockViews struct{ side, plan, front bounds }

// threeViews draws length × height, length × width below it, and width × height
// beside it.
func (d *drawing) threeViews(extent [3]float64, names [3]string, p pen) blockViews {
	d.upTo(max(extent[0], extent[1], extent[2]))
	var shown [3]float64
	var cut, false3 [3]bool
	for i := range extent {
		others := max(extent[(i+1)%3], extent[(i+2)%3])
		shown[i], cut[i] = shortened(extent[i], others)
	}
	for i := range shown {
		f := d.stretch(shown[i])
		shown[i] *= f * d.k
		false3[i] = cut[i] || f != 1
	}
	l, w, h := shown[0], shown[1], shown[2]
	side := bounds{point{0, -h}, point{l, 0}}
	plan := bounds{point{0, viewGap}, point{l, viewGap + w}}
	front := bounds{point{l + viewGap, -h}, point{l + viewGap + w, 0}}
	d.bar(p, side, cut[0] || cut[2], cut[2], true)
	d.bar(p, plan, cut[0] || cut[1], cut[1], false)
	d.bar(p, front, cut[1] || cut[2], cut[2], false)

	d.upright(side.low, point{0, 0}, -firstDimension, plain(names[2], extent[2]).unless(false3[2]))
	left := -firstDimension
	if d.abreast {
		left -= nextDimension
	}
	d.upright(plan.low, point{0, plan.high.y}, left, plain(names[1], extent[1]).unless(false3[1]))
	d.level(point{0, plan.high.y}, plan.high, plan.high.y+firstDimension, plain(names[0], extent[0]).unless(false3[0]))
	return blockViews{side, plan, front}
}

// beneath writes texts inside a box or else to its right.
func (d *drawing) beneath(b bounds, texts ...lettering) {
	width := 0.0
	for _, t := range texts {
		width = max(width, textWidth(t.text))
	}
	if width+3 <= b.width() && lineSpace*float64(len(texts)) <= b.height() {
		d.within(b, 0, texts...)
		return
	}
	joined := lettering{class: faceText, text: texts[0].text, face: texts[0].face}
	for _, t := range texts[1:] {
		joined.text, joined.face = joined.text+", "+t.text, ""
	}
	to := b.middle()
	from := point{b.high.x + 6, to.y}
	d.leader(from, to, true)
	d.sideways(joined, from.plus(0, capital/2), 1)
}

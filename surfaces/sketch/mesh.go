package sketch

import (
	"slices"

	"filmbuild/surfaces"
)

// drawMesh shows the box around a mesh, whose facets the shape does not hold,
// along the axes of its file.
func drawMesh(d *drawing, s *surfaces.Mesh) {
	d.views = "The box around a mesh along the axes of its file: x to the right and z up, x and y below it, y and z beside it"
	d.note("The box around the mesh; its form is not drawn.")
	box, _ := s.Box()
	var extent [3]float64
	for i := range extent {
		extent[i] = box.High[i] - box.Low[i]
	}
	b := d.threeViews(extent, [3]string{"along x", "along y", "along z"}, imaginary)
	at := point{b.front.low.x, b.plan.low.y + capital}
	at.x = max(at.x, b.plan.high.x+viewGap)
	for i, f := range s.Measure().Faces {
		d.right(d.face(f.Name), at.plus(0, float64(i)*lineSpace))
	}
	if slices.Contains(d.notes, brokenNote) {
		return // the break lines stand where the names would
	}
	for _, axis := range []struct {
		name string
		view bounds
	}{{"x, z", b.side}, {"x, y", b.plan}, {"y, z", b.front}} {
		d.inView(lettering{text: axis.name, class: noteText}, axis.view)
	}
}

// inView writes a text into the middle of a view if it has room.
func (d *drawing) inView(l lettering, b bounds) {
	at := b.middle().plus(0, capital/2)
	if textWidth(l.text)+2 <= b.width() && lineSpace <= b.height() && d.free(l, at) {
		d.write(l, at)
	}
}

// Package sheets draws the markings of a job: one marking at true scale, its
// lines to cut, or all markings of a face at their places. It looks a job and
// its estimate up and computes nothing; package surfaces/sheet draws.
package sheets

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"filmbuild/estimate"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/sheet"
)

// Wanted says which sheet of a job is drawn: that of a marking, or that of a
// component (or region) and face.
type Wanted struct {
	Marking   string
	Component string
	Face      string
	OtherSide bool   // the mirrored places of the face
	Layer     string // all (taken unless given) or cut, of a marking
	Units     string // si (taken unless given) or us
	Date      string // printed as it is
}

// teller reports one fault.
type teller = func(pointer, code, format string, args ...any)

// Layers are the sheets of a marking: everything, or the lines to cut.
func Layers() []string { return []string{"all", "cut"} }

// Draw draws a sheet. What cannot be drawn is reported, with pointers to the
// members of Wanted in lower case, and gives nil.
func Draw(job *estimate.Job, e *estimate.Estimate, w Wanted, report func(pointer, code, detail string)) ([]byte, error) {
	clean := true
	tell := func(pointer, code, format string, args ...any) {
		clean = false
		report(pointer, code, fmt.Sprintf(format, args...))
	}
	look := sheet.Look{Of: job.Name, Date: w.Date, US: w.Units == "us"}
	if n := utf8.RuneCountInString(w.Date); n > sheet.MostLettering {
		tell("/date", "too_long", "date has %d characters; at most %d", n, sheet.MostLettering)
	}
	switch {
	case w.Marking == "" && w.Component == "":
		tell("/marking", "required", "name a marking (%s), or a component and its face (%s)", orNone(ids(job)), orNone(Faces(e)))
	case w.Marking != "" && w.Component+w.Face != "":
		tell("/marking", "inconsistent", "a marking and a component are named; ask for the sheet of one of them")
	case w.Component != "" && w.Layer == "cut":
		tell("/layer", "not_applicable", "layer is cut, which is a sheet of one marking; name the marking")
	case w.Marking != "" && w.OtherSide:
		tell("/other_side", "not_applicable", "other_side is of a face; the figure of a marking is the same on both")
	}
	if !clean {
		return nil, nil
	}
	var picture []byte
	var err error
	at := "/marking"
	if w.Marking != "" {
		picture, err = alone(job, w, look, tell)
	} else {
		at = "/component"
		picture, err = face(job, e, w, look, tell)
	}
	var found surfaces.Faults
	if errors.As(err, &found) { // of a figure that no step paints, and that nobody has measured yet
		tell(at, found[0].Code, "%s", found[0].Detail)
		return nil, nil
	}
	return picture, err
}

func alone(job *estimate.Job, w Wanted, look sheet.Look, tell teller) ([]byte, error) {
	m := find(job, w.Marking)
	if m == nil {
		tell("/marking", "unknown_reference", "there is no marking %q; there is %s", w.Marking, orNone(ids(job)))
		return nil, nil
	}
	look.Title = m.ID
	if w.Layer == "cut" {
		return sheet.Cut(m.Figure, look)
	}
	return sheet.Figure(m.Figure, look)
}

func face(job *estimate.Job, e *estimate.Estimate, w Wanted, look sheet.Look, tell teller) ([]byte, error) {
	var list []sheet.Placed
	elsewhere := false
	for i := range e.Placings {
		p := &e.Placings[i]
		one := sheet.Placed{Name: p.Marking, Figure: figure(job, p.Marking), Fix: p.Fix}
		if p.Component != w.Component {
			continue
		}
		here, there := p.Face == w.Face, p.Mirrored && p.OtherFace == w.Face
		switch {
		case here && there && w.OtherSide, there && !here && !w.OtherSide:
			one.Fix = *p.OtherSide
			list = append(list, one)
		case here && !w.OtherSide:
			list = append(list, one)
		default:
			elsewhere = true
		}
	}
	switch {
	case len(list) > sheet.MostPlaced:
		tell("/face", "too_many", "%d markings are placed there; a sheet shows at most %d", len(list), sheet.MostPlaced)
		return nil, nil
	case len(list) == 0 && elsewhere && w.OtherSide:
		tell("/other_side", "not_applicable", "no marking of %s stands mirrored on the same face; its other side is a face of its own", w.Component)
		return nil, nil
	case len(list) == 0:
		tell("/component", "unknown_reference", "no marking has a place on %s; there are places on %s", strings.Trim(w.Component+"/"+w.Face, "/"), orNone(Faces(e)))
		return nil, nil
	}
	look.Title = strings.Trim(w.Component+", "+w.Face, ", ")
	if w.OtherSide {
		look.Title += ", the other side"
	}
	return sheet.Face(list, look)
}

// Faces lists the faces that have a placing sheet, as component/face.
func Faces(e *estimate.Estimate) []string {
	var out []string
	for _, p := range e.Placings {
		out = append(out, strings.Trim(p.Component+"/"+p.Face, "/"))
		if p.Mirrored {
			out = append(out, strings.Trim(p.Component+"/"+p.OtherFace, "/"))
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func ids(job *estimate.Job) []string {
	var out []string
	for i := range job.Markings {
		out = append(out, job.Markings[i].ID)
	}
	return out
}

func find(job *estimate.Job, id string) *estimate.Marking {
	for i := range job.Markings {
		if job.Markings[i].ID == id {
			return &job.Markings[i]
		}
	}
	return nil
}

func figure(job *estimate.Job, id string) marking.Figure {
	if m := find(job, id); m != nil {
		return m.Figure
	}
	return nil
}

// orNone lists names for a sentence, the first of many.
func orNone(names []string) string {
	const most = 12
	if len(names) > most {
		return strings.Join(names[:most], ", ") + " and more"
	}
	return cmp.Or(strings.Join(names, ", "), "none in this job")
}

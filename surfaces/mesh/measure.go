package mesh

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"
)

// Measure reads a mesh and measures it. See Options for what can be asked.
//
//	area   = Σ ½·|(b−a)×(c−a)|·u²    in float64, with Neumaier's summation
//	volume = Σ a·((b−a)×(c−a))/6·u³   signed, by the order of the corners
//
// with u the metres of the unit. Normals in the file are not used. Memory is
// constant for a binary STL of more facets than CheckFacets.
//
// Errors: *OptionError, *FileError, and what the context or r returned.
func Measure(ctx context.Context, r io.Reader, o Options) (Result, error) {
	if err := o.first(); err != nil {
		return Result{}, err
	}
	m := newMeter(o)
	m.read = &reading{ctx: ctx, size: o.Size, sink: m.facet, meter: m}
	contents, err := m.read.run(r, o.Format)
	if err != nil {
		return Result{}, err
	}
	return m.result(ctx, contents)
}

// MeasureFile is Measure for a file: it takes the length from the file and,
// where the options state none, the format from its name.
func MeasureFile(ctx context.Context, name string, o Options) (Result, error) {
	file, err := os.Open(name)
	if err != nil {
		return Result{}, err
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return Result{}, err
	}
	if !info.Mode().IsRegular() {
		return Result{}, fmt.Errorf("%s is not a file", name)
	}
	o.Size = info.Size()
	if o.Size == 0 {
		return Result{}, fault("empty", Place{Line: 1}, "the file has no bytes")
	}
	if o.Format == "" {
		o.Format = FormatOf(name)
	}
	return Measure(ctx, file, o)
}

// expect is told the number of facets that a binary STL promises: if it is too
// large for the checks, nothing is stored from the start.
func (m *meter) expect(facets uint64) {
	if facets > uint64(m.options.CheckFacets) {
		m.store = nil
	}
}

func (m *meter) result(ctx context.Context, contents Contents) (Result, error) {
	metres, err := Metres(m.options.Unit)
	if err != nil {
		return Result{}, err
	}
	if err := m.chosenExist(contents.Solids); err != nil {
		return Result{}, err
	}
	if m.facets == 0 {
		return Result{}, &OptionError{"/solids", "inconsistent", "the chosen solids have no facets; choose others"}
	}
	r := Result{
		Format: contents.Format, Unit: m.options.Unit, Facets: m.facets,
		AreaM2: m.all.areaM2(metres), VolumeM3: m.all.volumeM3(m.origin, metres),
		Box: m.box.scaled(metres), Warnings: contents.Warnings,
		Polygons: Polygons{ZeroArea: m.all.zero, Concave: m.forms[0], Warped: m.forms[1], Crossing: m.forms[2]},
		Solids:   m.solidList(contents.Solids, metres),
	}
	m.split(&r, metres)
	if m.store != nil && r.AreaM2 > 0 {
		if r.Checks, err = check(ctx, m.store, m.direction, metres); err != nil {
			return Result{}, err
		}
		if r.Inside, err = lookInside(ctx, m.store, m.options, r.Checks.WindingConflicts == 0); err != nil {
			return Result{}, err
		}
	}
	r.Accuracy = accuracy(m.options, r.Checks)
	r.Working = m.working(r, metres)
	r.Warnings = append(r.Warnings, m.warn(r, metres)...)
	return r, nil
}

// chosenExist refuses names of solids that the file does not have.
func (m *meter) chosenExist(names []string) error {
	for i, want := range m.chosen {
		found := false
		for n := range names {
			found = found || solidName(names, n) == want
		}
		if !found {
			return &OptionError{fmt.Sprintf("/solids/%d", i), "unknown_reference", fmt.Sprintf("the file has no solid %q; it has %s", want, listNames(names))}
		}
	}
	return nil
}

func listNames(names []string) string {
	var listed []string
	for i := range names[:min(len(names), 10)] {
		listed = append(listed, fmt.Sprintf("%q", solidName(names, i)))
	}
	if more := len(names) - len(listed); more > 0 {
		listed = append(listed, fmt.Sprintf("and %d more", more))
	}
	return strings.Join(listed, ", ")
}

// solidName gives a solid without a name its number.
func solidName(names []string, i int) string {
	if names[i] == "" {
		return fmt.Sprintf("solid %d", i+1)
	}
	return names[i]
}

// solidList leaves out solids that were not chosen or have no facets. In a
// binary STL, which has one solid, its sums are those of the whole.
func (m *meter) solidList(names []string, metres float64) []Solid {
	sums := m.solids
	if len(names) == 1 {
		sums = append(sums[:0:0], m.all)
		sums[0].facets = m.facets
	}
	list := []Solid{}
	for i, s := range sums {
		if s.facets > 0 {
			list = append(list, Solid{solidName(names, i), s.facets, s.areaM2(metres), s.volumeM3(m.origin, metres)})
		}
	}
	return list
}

func (m *meter) split(r *Result, metres float64) {
	if m.direction == nil {
		r.Faces = []Face{{Whole, r.AreaM2}}
		return
	}
	for part, name := range m.direction.names {
		if area := m.parts[part].value() * metres * metres; area > 0 {
			r.Faces = append(r.Faces, Face{name, area})
		}
	}
	r.Border = &Border{borderDeg, m.near.value() * metres * metres}
}

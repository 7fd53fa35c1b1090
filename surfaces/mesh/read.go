package mesh

import (
	"bufio"
	"context"
	"io"
	"os"
	"path"
	"strings"
)

// The formats of mesh files.
const (
	FormatSTL       = "stl" // text or binary: its contents decide
	FormatSTLText   = "stl_text"
	FormatSTLBinary = "stl_binary"
	FormatOBJ       = "obj"
	FormatPLY       = "ply" // its header says which of three encodings
	FormatPLYText   = "ply_text"
	FormatPLYLittle = "ply_binary_little_endian"
	FormatPLYBig    = "ply_binary_big_endian"
)

// FormatOf returns the format that a file's name promises, by its ending and
// whatever its case, and "" for none of the three.
func FormatOf(name string) string {
	switch ending := strings.ToLower(strings.TrimPrefix(path.Ext(name), ".")); ending {
	case FormatSTL, FormatOBJ, FormatPLY:
		return ending
	}
	return ""
}

// bufferBytes is how much is read at a time: large enough that the reading
// itself costs little, small enough to stay in a processor's cache.
const bufferBytes = 128 << 10

// reading is what the readers of all formats share.
type reading struct {
	ctx  context.Context
	from *bufio.Reader
	size int64 // of the whole file; 0 or less where it is not known
	sink Sink
	// The meter, where the sink is one: it is told what a binary STL promises and
	// can take many records of it at once.
	meter *meter
	// The file, where it is one that can be read at any place, and where in it
	// the reading began.
	file  *os.File
	start int64

	contents Contents
	notes    warnings
	corners  []Point // of the facet being read
	unsaid   int64   // facets since the context was last asked
}

// Read passes every facet of a mesh to sink, in the order of the file, and
// returns what the file held. Format is stl, obj or ply, or "" for whatever
// the contents look like. Size is the length of the file in bytes where it is
// known, otherwise 0: a binary STL is then told from a text by its contents,
// and its count is verified at the end.
//
// Memory: the buffers, one facet, and for OBJ and PLY the vertices.
// Errors: *FileError, what sink or the context returned, or what r returned.
func Read(ctx context.Context, r io.Reader, format string, size int64, sink Sink) (Contents, error) {
	return (&reading{ctx: ctx, size: size, sink: sink}).run(r, format)
}

func (r *reading) run(from io.Reader, format string) (Contents, error) {
	if file, ok := from.(*os.File); ok {
		r.place(file)
		a := readAhead(file)
		defer a.end()
		from = a
	}
	r.from = bufio.NewReaderSize(from, bufferBytes)
	if err := r.choose(format); err != nil {
		return Contents{}, err
	}
	r.contents.Warnings = r.notes.list
	if r.contents.Facets == 0 {
		return Contents{}, fault("empty", Place{Line: 1}, "the file has no facets, so there is no area to measure; points and lines have none")
	}
	return r.contents, nil
}

// place notes a file that can be read at any place.
func (r *reading) place(file *os.File) {
	info, err := file.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return
	}
	if r.start, err = file.Seek(0, io.SeekCurrent); err == nil {
		r.file = file
	}
}

// emit passes a facet on.
func (r *reading) emit(at Place, solid int) error {
	if r.unsaid++; r.unsaid == 4096 {
		r.unsaid = 0
		if err := r.ctx.Err(); err != nil {
			return err
		}
	}
	r.contents.Facets++
	return r.sink(Facet{Corners: r.corners, Solid: solid, At: at})
}

// addSolid begins a solid or group.
func (r *reading) addSolid(name string, at Place) (int, error) {
	if len(r.contents.Solids) == MaxSolids {
		return 0, fault("too_many", at, "the file has more than %d solids or groups; join some of them", MaxSolids).counted(MaxSolids, MaxSolids+1)
	}
	r.contents.Solids = append(r.contents.Solids, name)
	return len(r.contents.Solids) - 1, nil
}

// addCorner adds to the facet being read.
func (r *reading) addCorner(p Point, at Place) error {
	if len(r.corners) == MaxCorners {
		return fault("too_many", at, "a facet has more than %d corners; split it", MaxCorners).counted(MaxCorners, MaxCorners+1)
	}
	r.corners = append(r.corners, p)
	return nil
}

// enoughCorners refuses a facet that has no area because corners are missing.
func (r *reading) enoughCorners(at Place) error {
	if n := len(r.corners); n < 3 {
		return fault("too_few_corners", at, "a facet has %d corners; it needs at least 3", n).counted(3, int64(n))
	}
	return nil
}

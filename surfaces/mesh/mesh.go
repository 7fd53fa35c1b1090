// Package mesh reads triangle and polygon meshes (STL, OBJ, PLY) as streams and
// measures their area, box and volume.
//
// Nothing is repaired. A file whose numbers cannot be trusted is refused with a
// *FileError that names the place; a file that can be measured but has
// something wrong with it is measured with a warning. No memory is reserved
// from a count that a file states about itself.
//
// Lengths are in the unit of the file while it is read, and in metres in a
// Result: the three formats carry no unit, so the caller states it.
package mesh

// Limits on what a file may ask for. Beyond them reading stops with a
// *FileError of the code too_many, line_too_long or out_of_range.
const (
	MaxLineBytes  = 1 << 20   // one line of a text file, continuation lines joined
	MaxCorners    = 10_000    // of one facet
	MaxVertices   = 8_000_000 // of an OBJ or PLY file, 24 bytes each: its facets refer back to them
	MaxSolids     = 10_000    // solids of an STL file, groups of an OBJ file
	MaxNameBytes  = 200       // of a solid's name; what is longer is cut
	MaxCoordinate = 1e12      // in the unit of the file, either sign
)

// Point is a position, or a vector between two.
type Point [3]float64

func (p Point) minus(q Point) Point { return Point{p[0] - q[0], p[1] - q[1], p[2] - q[2]} }
func (p Point) plus(q Point) Point  { return Point{p[0] + q[0], p[1] + q[1], p[2] + q[2]} }
func (p Point) times(f float64) Point {
	return Point{p[0] * f, p[1] * f, p[2] * f}
}
func (p Point) dot(q Point) float64 { return p[0]*q[0] + p[1]*q[1] + p[2]*q[2] }
func (p Point) cross(q Point) Point {
	return Point{p[1]*q[2] - p[2]*q[1], p[2]*q[0] - p[0]*q[2], p[0]*q[1] - p[1]*q[0]}
}

// Place is where in a file something stands: a line of a text file, counted
// from 1, or an offset in bytes in a binary one, with Line 0.
type Place struct {
	Line int64 `json:"line,omitempty"`
	Byte int64 `json:"byte,omitempty"`
}

// Facet is one flat polygon of a file, its corners in the order of the file.
// Corners belongs to the reader and is overwritten by the next facet.
type Facet struct {
	Corners []Point
	Solid   int // index into Contents.Solids
	At      Place
}

// Sink takes the facets of a file one by one. An error ends the reading and is
// returned as it is.
type Sink func(Facet) error

// Contents is what a file held, once all of it has been read.
type Contents struct {
	Format   string // one of the Format constants
	Solids   []string
	Facets   int64
	Warnings []Warning
}

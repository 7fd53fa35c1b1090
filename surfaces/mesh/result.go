package mesh

import "filmbuild/surfaces/quantity"

// Whole is the face of a mesh that is not split by direction.
const Whole = "surface"

// Result is what a mesh comes to, in SI.
type Result struct {
	Format   string             `json:"format"`
	Unit     string             `json:"unit"` // of the file, as stated
	Facets   int64              `json:"facets"`
	AreaM2   float64            `json:"area_m2"`
	VolumeM3 float64            `json:"volume_m3"` // signed: above 0 where facets face outward; of a closed mesh only
	Box      Box                `json:"box"`
	Faces    []Face             `json:"faces"`  // by direction, or the whole
	Border   *Border            `json:"border"` // nil without a split
	Solids   []Solid            `json:"solids"` // those measured
	Polygons Polygons           `json:"polygons"`
	Checks   *Checks            `json:"checks"` // nil where they were left out
	Inside   *Inside            `json:"inside"` // nil where it was left out
	Accuracy Accuracy           `json:"accuracy"`
	Warnings []Warning          `json:"warnings"`
	Working  []quantity.Working `json:"working"`
}

// Face is the part of a mesh that faces one way.
type Face struct {
	Name   string  `json:"face"`
	AreaM2 float64 `json:"area_m2"`
}

// Border is the area that would change sides if the axis were off by a little.
type Border struct {
	WithinDeg float64 `json:"within_deg"`
	AreaM2    float64 `json:"area_m2"`
}

// Solid is one solid of an STL file, one group of an OBJ file, or the whole of
// a file that has neither. One without a name is called solid and its number.
type Solid struct {
	Name     string  `json:"solid"`
	Facets   int64   `json:"facets"`
	AreaM2   float64 `json:"area_m2"`
	VolumeM3 float64 `json:"volume_m3"`
}

// Polygons counts the facets that are not plain triangles or convex polygons.
type Polygons struct {
	ZeroArea int64 `json:"zero_area"`
	Concave  int64 `json:"concave"`
	Warped   int64 `json:"warped"`
	Crossing int64 `json:"crossing"`
}

package api

import (
	"math"
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate"
	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
	"filmbuild/surfaces/sketch"
)

// KindEntry is one kind of shape or of marking.
type KindEntry struct {
	Kind    string           `json:"kind"`
	Doc     string           `json:"doc"`
	Faces   []string         `json:"faces,omitempty"` // of shapes: the faces it may have
	Fields  []quantity.Field `json:"fields"`
	Source  string           `json:"source,omitempty"` // of markings: where the proportions come from
	Example any              `json:"example"`          // its fields, filled in
	Worked  any              `json:"worked"`           // the example, measured
	Sketch  string           `json:"sketch,omitempty"` // of shapes: where the example is, drawn to scale
	Sheet   string           `json:"sheet,omitempty"`  // of markings: where the example is, at true scale
	Extent  *ExtentEntry     `json:"extent,omitempty"` // of shapes that a region may take a bay or a band of
	Lines   []LineEntry      `json:"lines,omitempty"`  // of shapes: the lines that a region's strip may follow
}

// ExtentEntry is how far the example reaches, in the numbers that bound a bay
// (from_m, to_m) and a band (from_z_m, to_z_m).
type ExtentEntry struct {
	FromM   float64  `json:"from_m"`
	ToM     float64  `json:"to_m"`
	Counted string   `json:"counted"` // where from_m and to_m count from
	FromZM  *float64 `json:"from_z_m,omitempty"`
	ToZM    *float64 `json:"to_z_m,omitempty"`
	Heights string   `json:"heights_counted,omitempty"` // where from_z_m and to_z_m count from; absent where there are no bands
}

// LineEntry is a line that a strip may follow, where the shape has it: a panel
// without holes has no line round them.
type LineEntry struct {
	Line     string `json:"line"`
	Measured string `json:"measured"` // how the strip's width is
	Stations bool   `json:"stations"` // whether from_m and to_m may bound it
}

// Shapes lists the kinds of shape.
type Shapes struct {
	Shapes []KindEntry `json:"shapes"`
}

// shapes lists the kinds of shape with their fields, units and limits.
//
//	@Summary	Kinds of shape
//	@Description	Of every kind: its fields with units and limits, the faces it may have, one example measured and drawn, how far that example reaches (the numbers that bound a bay or a band of a region) and the lines that a region's strip may follow.
//	@Tags		catalogue
//	@Produce	json
//	@Success	200	{object}	Shapes
//	@Failure	400	{object}	Problem
//	@Failure	406	{object}	Problem
//	@Router		/v1/shapes [get]
func (s *Server) shapes(c *gin.Context) {
	var answer Shapes
	for _, k := range surfaces.Kinds() {
		answer.Shapes = append(answer.Shapes, KindEntry{Kind: k.Name, Doc: k.Doc, Faces: k.Faces, Fields: k.Fields, Example: k.Example,
			Worked: estimate.MeasureShape(k.Example), Sketch: "/v1/shapes/" + k.Name + "/sketch",
			Extent: extentOf(k.Example), Lines: linesOf(k.Example)})
	}
	s.list(c, answer)
}

// extentOf is nil for a shape that cannot be divided by stations.
func extentOf(s surfaces.Shape) *ExtentEntry {
	divisible, ok := s.(surfaces.Divisible)
	if !ok {
		return nil
	}
	e := divisible.Extent()
	entry := &ExtentEntry{FromM: toNanometre(e.From), ToM: toNanometre(e.To), Counted: e.Station, Heights: e.Height}
	if e.Height != "" {
		low, high := toNanometre(e.Low), toNanometre(e.High)
		entry.FromZM, entry.ToZM = &low, &high
	}
	return entry
}

// toNanometre rounds what was worked out, to be copied into a job; a bound is
// taken for the end that it is so near to.
func toNanometre(m float64) float64 { return math.Round(m*1e9) / 1e9 }

func linesOf(s surfaces.Shape) []LineEntry {
	striped, ok := s.(surfaces.Striped)
	if !ok {
		return nil
	}
	var lines []LineEntry
	for _, l := range striped.Lines() {
		lines = append(lines, LineEntry{Line: l.Name, Measured: l.Measured, Stations: l.Stations})
	}
	return lines
}

// sketch draws the example of a kind of shape to scale.
//
//	@Summary	The example of a kind of shape, drawn to scale
//	@Tags		catalogue
//	@Produce	image/svg+xml
//	@Param		kind	path		string	true	"kind of shape"
//	@Success	200		{string}	string
//	@Failure	400		{object}	Problem
//	@Failure	404		{object}	Problem
//	@Failure	406		{object}	Problem
//	@Failure	500		{object}	Problem
//	@Router		/v1/shapes/{kind}/sketch [get]
func (s *Server) sketch(c *gin.Context) {
	if accepts(c, "", drawn) == "" || !bare(c) {
		return
	}
	for _, k := range surfaces.Kinds() {
		if k.Name != c.Param("kind") {
			continue
		}
		picture, err := sketch.SVG(k.Example, sketch.SI, "")
		if err != nil {
			refuseError(c, err)
			return
		}
		send(c, http.StatusOK, drawn, picture)
		return
	}
	refuse(c, http.StatusNotFound, "there is no kind of shape "+c.Param("kind")+"; /v1/shapes lists them")
}

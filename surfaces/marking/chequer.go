package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

const sourceChequer = "plane geometry; ICAO Annex 14 6.2.3: squares of 1.5 to 3 m on obstacles, the corners in the darker colour"

// Chequer is an upright panel of squares in two colours, the lower left corner
// dark. With odd numbers of rows and columns all four corners are dark.
type Chequer struct {
	SquareM     float64 `json:"square_m" limit:"[0.001,100]" doc:"side of a square"`
	Columns     int     `json:"columns" limit:"[1,100]" doc:"squares from left to right"`
	Rows        int     `json:"rows" limit:"[1,100]" doc:"squares from bottom to top"`
	DarkColour  string  `json:"dark_colour" doc:"red unless given"`
	LightColour string  `json:"light_colour" doc:"white unless given"`
	Shared
}

func newChequer() *Chequer {
	return &Chequer{DarkColour: "red", LightColour: "white", Shared: usualShared()}
}

// mostSquares keeps the work bounded.
const mostSquares = 1600

// Kind implements Figure.
func (*Chequer) Kind() string { return "chequer" }

// Check implements Figure.
func (f *Chequer) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) && f.Columns*f.Rows > mostSquares {
		report("/rows", "too_many", fmt.Sprintf("the panel would have %d squares; at most %d: measure a part of it", f.Columns*f.Rows, mostSquares))
	}
	checkColour("/dark_colour", f.DarkColour, report)
	checkColour("/light_colour", f.LightColour, report)
}

// Layers implements Figure.
func (f *Chequer) Layers() []planar.Layer {
	at := func(column, row int) planar.Point {
		return planar.Point{X: float64(column) * f.SquareM, Y: float64(row) * f.SquareM}
	}
	dark := planar.Layer{Colour: f.DarkColour}
	for row := range f.Rows {
		for column := row % 2; column < f.Columns; column += 2 {
			dark.Outline = append(dark.Outline, planar.Rectangle(at(column, row), at(column+1, row+1)))
		}
	}
	return []planar.Layer{layer(f.LightColour, planar.Rectangle(planar.Point{}, at(f.Columns, f.Rows))), dark}
}

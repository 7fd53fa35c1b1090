package marking

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"filmbuild/surfaces/planar"
)

// The flags of a public rule, in its own units, part by part in the order of
// painting; x runs from the hoist, y up.
//
//go:embed flags.csv
var flagsCSV string

// flagDesign is one flag in the units of its rule.
type flagDesign struct {
	name, source, mark string
	hoist, fly         float64
	layers             []planar.Layer
}

var flagDesigns = sync.OnceValues(func() ([]flagDesign, error) { return readFlags(flagsCSV) })

// readFlags refuses an unknown column or shape, a row without source, and rows
// of one design that are not together or not of one size.
func readFlags(text string) ([]flagDesign, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], []string{"design", "hoist", "fly", "colour", "shape", "numbers", "source", "mark", "note"}) {
		return nil, errors.New("the columns must be design, hoist, fly, colour, shape, numbers, source, mark, note")
	}
	var designs []flagDesign
	for i, row := range rows[1:] {
		sizes, err := numbersOf(row[1] + " " + row[2])
		if err != nil || len(sizes) != 2 || !(sizes[0] > 0 && sizes[1] > 0) {
			return nil, fmt.Errorf("row %d: hoist and fly are no sizes", i+2)
		}
		if row[0] == "" || row[3] == "" || row[6] == "" || row[7] == "" {
			return nil, fmt.Errorf("row %d: design, colour, source or mark is missing", i+2)
		}
		at := slices.IndexFunc(designs, func(d flagDesign) bool { return d.name == row[0] })
		if at < 0 {
			at = len(designs)
			designs = append(designs, flagDesign{name: row[0], source: row[6], mark: row[7], hoist: sizes[0], fly: sizes[1]})
		}
		d := &designs[at]
		if at != len(designs)-1 || d.hoist != sizes[0] || d.fly != sizes[1] {
			return nil, fmt.Errorf("row %d: the rows of %s do not go together", i+2, row[0])
		}
		region, err := d.part(row[4], row[5])
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", i+2, err)
		}
		d.layers = append(d.layers, planar.Layer{Colour: row[3], Outline: region})
	}
	return designs, nil
}

func numbersOf(text string) ([]float64, error) {
	var out []float64
	for word := range strings.FieldsSeq(text) {
		x, err := strconv.ParseFloat(word, 64)
		if err != nil || math.IsNaN(x) || math.Abs(x) > 1e6 {
			return nil, fmt.Errorf("%q is no number", word)
		}
		out = append(out, x)
	}
	return out, nil
}

// part reads one part: rectangle x y x y, polygon x y …, disc x y d, stripes n x
// y x y (every other one of n, the lowest first), stars x y x y columns rows d
// (where their numbers are both even or both odd), arms from to (of a saltire,
// offsets to the left of the lines from the centre to the corners).
func (d flagDesign) part(shape, numbers string) (planar.Region, error) {
	n, err := numbersOf(numbers)
	if err != nil {
		return nil, err
	}
	at := func(i int) planar.Point { return planar.Point{X: n[i], Y: n[i+1]} }
	switch {
	case shape == "rectangle" && len(n) == 4:
		return planar.Region{planar.Rectangle(at(0), at(2))}, nil
	case shape == "polygon" && len(n) >= 6 && len(n)%2 == 0:
		var points []planar.Point
		for i := 0; i < len(n); i += 2 {
			points = append(points, at(i))
		}
		return planar.Region{planar.Polygon(points...)}, nil
	case shape == "disc" && len(n) == 3 && n[2] > 0:
		return planar.Region{planar.Circle(at(0), n[2]/2)}, nil
	case shape == "stripes" && len(n) == 5 && n[0] >= 1 && n[0] <= 99:
		return levelStripes(int(n[0]), at(1), at(3)), nil
	case shape == "stars" && len(n) == 7 && n[4] >= 1 && n[5] >= 1 && n[4]*n[5] <= 1000 && n[6] > 0:
		return starGrid(at(0), at(2), int(n[4]), int(n[5]), n[6]/2), nil
	case shape == "arms" && len(n) == 2:
		return d.arms(n[0], n[1]), nil
	}
	return nil, fmt.Errorf("there is no shape %q with %d numbers", shape, len(n))
}

func levelStripes(n int, low, high planar.Point) planar.Region {
	var out planar.Region
	y := func(i int) float64 { return low.Y + (high.Y-low.Y)*float64(i)/float64(n) }
	for i := 0; i < n; i += 2 {
		out = append(out, planar.Rectangle(planar.Point{X: low.X, Y: y(i)}, planar.Point{X: high.X, Y: y(i + 1)}))
	}
	return out
}

func starGrid(low, high planar.Point, columns, rows int, radius float64) planar.Region {
	var out planar.Region
	star := starOutline(radius)
	for row := 1; row < rows; row++ {
		for column := 1; column < columns; column++ {
			if (row+column)%2 == 0 {
				at := planar.Point{
					X: low.X + (high.X-low.X)*float64(column)/float64(columns),
					Y: low.Y + (high.Y-low.Y)*float64(row)/float64(rows),
				}
				out = append(out, planar.Placement{Scale: 1, Shift: at}.Outline(star))
			}
		}
	}
	return out
}

// arms are the four strips from the centre to the corners, cut off at the edges
// of the flag.
func (d flagDesign) arms(from, to float64) planar.Region {
	var out planar.Region
	centre := planar.Point{X: d.fly / 2, Y: d.hoist / 2}
	reach := math.Hypot(d.fly, d.hoist)
	for _, way := range [][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		x, y := way[0]*d.fly/reach, way[1]*d.hoist/reach
		place := func(along, left float64) planar.Point {
			return planar.Point{X: centre.X + along*x - left*y, Y: centre.Y + along*y + left*x}
		}
		strip := []planar.Point{place(0, from), place(reach, from), place(reach, to), place(0, to)}
		strip = cutAt(cutAt(strip, 0, 1), d.fly, -1)
		strip = swapped(cutAt(cutAt(swapped(strip), 0, 1), d.hoist, -1))
		o := planar.Polygon(strip...)
		if o.SignedArea() < 0 {
			o = o.Reversed()
		}
		out = append(out, o)
	}
	return out
}

// swapped changes x and y.
func swapped(points []planar.Point) []planar.Point {
	out := make([]planar.Point, len(points))
	for i, p := range points {
		out[i] = planar.Point{X: p.Y, Y: p.X}
	}
	return out
}

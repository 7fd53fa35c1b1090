package marking

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"filmbuild/surfaces/planar"
)

// The block alphabet on a grid 6 units high: width in units and the parts
// whose union is the letter, "x y x y" for a rectangle and more pairs for the
// corners of a polygon. The proportions are those of the source; how a letter
// is put together is our own construction. Slanting strokes are one unit
// across, their ends cut level.
//
//go:embed block_letters.csv
var blockLettersCSV string

// glyph is one letter on the grid.
type glyph struct {
	width float64
	parts planar.Region
}

// alphabet holds for each letter its forms, the narrowest first.
type alphabet map[rune][]glyph

// blockAlphabet reads the table once; a test reads it too, so that an error
// never leaves this repository.
var blockAlphabet = sync.OnceValues(func() (alphabet, error) { return readAlphabet(blockLettersCSV) })

// readAlphabet refuses an unknown column, a letter given twice in one width
// and a row without source.
func readAlphabet(text string) (alphabet, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], []string{"letter", "width", "parts", "source", "note"}) {
		return nil, errors.New("the columns must be letter, width, parts, source, note")
	}
	letters := alphabet{}
	for i, row := range rows[1:] {
		if err := letters.add(row); err != nil {
			return nil, fmt.Errorf("row %d: %w", i+2, err)
		}
	}
	for _, forms := range letters {
		slices.SortFunc(forms, func(a, b glyph) int { return int(a.width - b.width) })
	}
	return letters, nil
}

func (letters alphabet) add(row []string) error {
	letter, size := utf8.DecodeRuneInString(row[0])
	if size == 0 || size != len(row[0]) {
		return fmt.Errorf("%q is not one letter", row[0])
	}
	if row[3] == "" {
		return errors.New("the source is missing")
	}
	width, err := strconv.ParseFloat(row[1], 64)
	if err != nil {
		return err
	}
	g := glyph{width: width}
	for part := range strings.SplitSeq(row[2], ";") {
		o, err := readPart(part)
		if err != nil {
			return err
		}
		g.parts = append(g.parts, o)
	}
	for _, other := range letters[letter] {
		if other.width == width {
			return fmt.Errorf("%c is given twice in the width %g", letter, width)
		}
	}
	letters[letter] = append(letters[letter], g)
	return nil
}

// readPart reads a rectangle or a polygon and turns it counter-clockwise, so
// that overlapping parts unite.
func readPart(text string) (planar.Outline, error) {
	var points []planar.Point
	fields := strings.Fields(text)
	if len(fields) < 4 || len(fields)%2 != 0 {
		return nil, fmt.Errorf("%q is not a list of pairs", text)
	}
	for i := 0; i < len(fields); i += 2 {
		x, errX := strconv.ParseFloat(fields[i], 64)
		y, errY := strconv.ParseFloat(fields[i+1], 64)
		if err := errors.Join(errX, errY); err != nil {
			return nil, err
		}
		points = append(points, planar.Point{X: x, Y: y})
	}
	if len(points) == 2 {
		return planar.Rectangle(points[0], points[1]), nil
	}
	o := planar.Polygon(points...)
	if o.SignedArea() < 0 {
		o = o.Reversed()
	}
	return o, nil
}

// Package sheet draws markings at true scale as stand-alone SVG: a sheet with
// dimensions, outlines for a stencil cutter, and a sheet that shows where all
// markings of one face go.
//
// Standing assumptions:
//   - one user unit is 1 mm of the part, on the skin and not as seen from the
//     side; y runs down; width, height and viewBox agree;
//   - one group for each colour pass in the order of painting, its id the
//     colour; lines stay lines, arcs are A and Bézier curves C, so that what is
//     read back has the areas that were measured;
//   - lengths on the sheet are true lengths of the part;
//   - letters and lines grow with the sheet, in the steps of ISO 3098 and ISO 128
//     (secondary accounts); what must be measured, such as the bar for checking
//     a print, is not scaled;
//   - there is no script, style sheet or link, and no date but the caller's.
package sheet

import (
	"math"
	"strings"
)

// Look is how a sheet is lettered.
type Look struct {
	Title string // what the sheet is of; the kind of the figure unless given
	Of    string // what it belongs to, such as the job; none unless given
	Date  string // as the caller writes it; none unless given
	US    bool   // lengths in inches, not in mm
}

// MostLettering is the longest date, in characters.
const MostLettering = 120

// metre is 1 m on the sheet, in user units.
const metre = 1000.0

// textHeight picks the height of the letters, in mm, for a figure of a width and
// height in mm: legible when the whole sheet fills a screen, and no smaller than
// the usual 3.5 mm.
func textHeight(width, height float64) float64 {
	want := max(0.02*math.Sqrt(width*height), 0.007*max(width, height))
	h := 3.5
	for _, step := range []float64{5, 7, 10, 14, 20, 28, 40, 56, 80, 112, 160, 224, 320} {
		if h >= want*0.85 {
			break
		}
		h = step
	}
	return h
}

// sentence makes a title of a wire word: star_and_bar becomes Star and bar.
func sentence(word string) string {
	text := strings.ReplaceAll(word, "_", " ")
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

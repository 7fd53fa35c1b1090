// Package class tells how mature an estimate is, by the published classes of
// cost estimates, and what would make it more so.
//
// The published classes go by how far a project is defined, from 0 to 100 %. A
// repaint has no drawings to count; here its definition is how much of the money
// rests on figures of the job's own: areas that were measured, rates and
// consumption that were tried, prices that were quoted. That reading, and the
// rule by which three shares become one, are ours and are stated as such.
package class

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

//go:embed classes.csv
var table string

// Class is one published class of estimate.
type Class struct {
	Number         int
	Name           string
	LowFrom, LowTo float64 // the low end of the expected range lies between these, percent of the figure
	HighFrom       float64 // the high end likewise
	HighTo         float64
	KnownFrom      float64 // definition of the project, percent
	KnownTo        float64
	Source         string
}

const columns = "class,name,low_from_percent,low_to_percent,high_from_percent,high_to_percent,known_from_percent,known_to_percent,source,ref,mark"

// All lists the classes, from the roughest to the surest.
//
// Source: AACE 18R-97 accuracy and definition by class, read in secondary pages
// (U01 and U02, mark B).
func All() ([]Class, error) { return classes() }

var classes = sync.OnceValues(read)

func read() ([]Class, error) {
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) < 2 || strings.Join(rows[0], ",") != columns {
		return nil, fmt.Errorf("classes.csv must have the columns %s", columns)
	}
	var list []Class
	for line, row := range rows[1:] {
		var n [8]float64
		for _, k := range []int{0, 2, 3, 4, 5, 6, 7} {
			if n[k], err = strconv.ParseFloat(row[k], 64); err != nil {
				return nil, fmt.Errorf("classes.csv line %d: %q is no number", line+2, row[k])
			}
		}
		if row[8] == "" || row[10] == "" {
			return nil, fmt.Errorf("classes.csv line %d has no source or no mark", line+2)
		}
		list = append(list, Class{Number: int(n[0]), Name: row[1], LowFrom: n[2], LowTo: n[3], HighFrom: n[4], HighTo: n[5], KnownFrom: n[6], KnownTo: n[7],
			Source: row[8] + " (" + row[9] + ", mark " + row[10] + ")"})
	}
	return list, nil
}

// Known is how much of the money rests on figures of the job's own: shares from
// 0 to 1, each weighted by the money that depends on it.
type Known struct {
	Areas  float64 // measured, or from shapes that come within a few percent
	Rates  float64 // rates and consumption from test patches, in part from the job's own figures
	Prices float64 // prices, wages and sums of the job's own
}

// definition is the mean of the three shares, in percent.
func (k Known) definition() float64 { return 100 * (k.Areas + k.Rates + k.Prices) / 3 }

// Of returns the class of an estimate and its definition in percent.
//
// The classes' published bands of definition overlap; a share counts for the
// rougher of two. No estimate is more than one class better than its weakest
// share by itself: areas to the centimetre do not mend prices that are guessed.
// The rule is ours (assumption).
func Of(k Known) (class Class, definitionPercent float64, err error) {
	all, err := All()
	if err != nil {
		return Class{}, 0, err
	}
	at := func(percent float64) int {
		for i, c := range all {
			if percent < c.KnownTo {
				return i
			}
		}
		return len(all) - 1
	}
	definitionPercent = k.definition()
	weakest := at(100 * min(k.Areas, k.Rates, k.Prices))
	return all[min(at(definitionPercent), weakest+1)], definitionPercent, nil
}

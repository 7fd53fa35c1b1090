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
)

// Public ratios of roundels: diameters from the centre out. The names are ours.
//
//go:embed roundel_ratios.csv
var roundelRatiosCSV string

type ratioSet struct {
	name, source, mark string
	ratios             []float64
}

var ratioSets = sync.OnceValues(func() ([]ratioSet, error) { return readRatioSets(roundelRatiosCSV) })

// readRatioSets refuses an unknown column, a set given twice, a row without
// source and ratios that do not increase.
func readRatioSets(text string) ([]ratioSet, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], []string{"ratio_set", "ratios", "source", "mark", "note"}) {
		return nil, errors.New("the columns must be ratio_set, ratios, source, mark, note")
	}
	var sets []ratioSet
	for i, row := range rows[1:] {
		s := ratioSet{name: row[0], source: row[2], mark: row[3]}
		before := 0.0
		for word := range strings.FieldsSeq(row[1]) {
			x, err := strconv.ParseFloat(word, 64)
			if err != nil {
				return nil, fmt.Errorf("row %d: %w", i+2, err)
			}
			if !(x > before && x <= 1000) {
				return nil, fmt.Errorf("row %d: the ratios do not increase", i+2)
			}
			s.ratios, before = append(s.ratios, x), x
		}
		if s.name == "" || s.source == "" || s.mark == "" || len(s.ratios) == 0 {
			return nil, fmt.Errorf("row %d: name, ratios, source or mark is missing", i+2)
		}
		if slices.ContainsFunc(sets, func(o ratioSet) bool { return o.name == s.name }) {
			return nil, fmt.Errorf("row %d: %s is given twice", i+2, s.name)
		}
		sets = append(sets, s)
	}
	return sets, nil
}

// ratioSetNamed finds a set, and lists the names of all.
func ratioSetNamed(name string) (set ratioSet, found bool, names []string) {
	sets, err := ratioSets()
	if err != nil {
		return ratioSet{}, false, nil
	}
	for _, s := range sets {
		names = append(names, s.name)
		if s.name == name {
			set, found = s, true
		}
	}
	return set, found, names
}

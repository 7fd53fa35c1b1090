// Package funding knows the forms on which money is asked for: their headings in
// order, the dated rules behind them, the base of indirect cost and the share
// that an applicant brings. It knows no paint and no job.
//
// The headings are those of public forms. What a funder asks beyond them is the
// funder's to say; its guidance comes first.
package funding

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
	"sync"

	"github.com/shopspring/decimal"
)

//go:embed rules.csv
var rulesTable string

//go:embed classes.csv
var classesTable string

// Class is one object class of Standard Form 424A, section B.
type Class struct {
	ID   string // as jobs name it
	Row  string // as the form numbers it
	Name string // as the form prints it
}

// Classes lists the object classes in the order of the form.
//
// Source: Standard Form 424A, section B, lines 6a to 6h (planning G01 [A]).
func Classes() []Class {
	return []Class{
		{"personnel", "6a", "Personnel"}, {"fringe", "6b", "Fringe Benefits"}, {"travel", "6c", "Travel"}, {"equipment", "6d", "Equipment"},
		{"supplies", "6e", "Supplies"}, {"contractual", "6f", "Contractual"}, {"construction", "6g", "Construction"}, {"other", "6h", "Other"},
	}
}

// ClassOf is the object class that a heading of a budget belongs to; false for a
// heading that is in no list here.
//
// Source: common practice under 2 CFR 200 subpart E; the funder's guidance decides.
func ClassOf(category string) (string, bool) {
	class, known := classes()[strings.ReplaceAll(strings.ToLower(strings.TrimSpace(category)), " ", "_")]
	return class, known
}

// Rented reports whether a heading is rent or hire, which is left out of the base
// of indirect cost.
//
// Source: 2 CFR 200.1, modified total direct cost: rental costs [C: from memory].
func Rented(category string) bool {
	switch strings.ToLower(strings.TrimSpace(category)) {
	case "hire", "rental", "rent", "room", "space":
		return true
	}
	return false
}

// classes reads the table of headings once; a test reads it too.
var classes = sync.OnceValue(func() map[string]string {
	list := map[string]string{}
	rows, err := csv.NewReader(strings.NewReader(classesTable)).ReadAll()
	if err != nil {
		return list
	}
	for _, row := range rows[1:] {
		list[row[0]] = row[1]
	}
	return list
})

// Rules are the dated rules of federal awards that hold on a day.
type Rules struct {
	EquipmentThreshold decimal.Decimal // cost of one thing from which it is equipment
	DeMinimisPercent   float64         // most that may be asked for indirect cost without a negotiated rate
	SubawardCap        decimal.Decimal // of each subaward, that counts in the base
	Sources            []string
}

// RulesOn returns the rules for an award of a date, written as 2026-05-31.
func RulesOn(date string) (Rules, error) {
	rows, err := csv.NewReader(strings.NewReader(rulesTable)).ReadAll()
	if err != nil {
		return Rules{}, fmt.Errorf("rules.csv: %w", err)
	}
	latest := map[string][]string{}
	for _, row := range rows[1:] {
		if row[1] <= date && (latest[row[0]] == nil || latest[row[0]][1] < row[1]) { // dates of ISO 8601 compare as texts
			latest[row[0]] = row
		}
	}
	var r Rules
	for _, name := range []string{"equipment_threshold", "de_minimis_percent", "subaward_cap"} {
		row := latest[name]
		if row == nil {
			return Rules{}, fmt.Errorf("no rule of %s is known for %s; the earliest is of 2014-12-26", strings.ReplaceAll(name, "_", " "), date)
		}
		value, err := decimal.NewFromString(row[2])
		if err != nil {
			return Rules{}, fmt.Errorf("rules.csv: %s: %w", name, err)
		}
		switch name {
		case "equipment_threshold":
			r.EquipmentThreshold = value
		case "de_minimis_percent":
			r.DeMinimisPercent = value.InexactFloat64()
		case "subaward_cap":
			r.SubawardCap = value
		}
		r.Sources = append(r.Sources, row[3])
	}
	return r, nil
}

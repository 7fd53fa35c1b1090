// Package caution holds the dangers of the work with the usual care against
// them, as data, and finds those that a step shows signs of.
//
// The texts are reminders. Local codes, the safety data sheets of what is used
// and licensed practice come first, and every text ends in one of them or in
// the last entry, which all jobs get.
package caution

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
)

//go:embed cautions.csv
var table []byte

// Caution is one danger.
type Caution struct {
	Code   string     `json:"code"`
	Text   string     `json:"text"`
	Source string     `json:"source"`
	Mark   string     `json:"mark"` // how sure the source is
	Wear   []string   `json:"wear"` // what to put on
	when   [][]string // a step needs all signs of one of these; none in one means always
}

// Signs are what a step shows: operation:blast, hazard:isocyanate,
// substrate:magnesium, method:hvlp, spray, removal, recovered, old:lead (or
// chromate, cadmium, asbestos, before_1978), openings, large.
type Signs []string

var load = sync.OnceValues(func() ([]Caution, error) { return read(bytes.NewReader(table)) })

// Wear lists what to put on against the dangers in list, each thing once. Air
// that is supplied makes a filter needless.
func Wear(list []*Caution) []string {
	wear := make([]string, 0, 8)
	for _, c := range list {
		for _, thing := range c.Wear {
			if !slices.Contains(wear, thing) {
				wear = append(wear, thing)
			}
		}
	}
	if slices.ContainsFunc(wear, func(thing string) bool { return strings.HasPrefix(thing, "supplied-air") }) {
		wear = slices.DeleteFunc(wear, func(thing string) bool {
			return strings.Contains(thing, "respirator") && !strings.HasPrefix(thing, "supplied-air")
		})
	}
	return wear
}

// All lists every caution in the order in which they are shown.
func All() []Caution {
	list, _ := load() // a test reads the embedded table
	return list
}

// For lists the cautions that a step shows signs of.
func For(signs Signs) []*Caution {
	all := All()
	found := make([]*Caution, 0, 24)
	for i := range all {
		if all[i].fits(signs) {
			found = append(found, &all[i])
		}
	}
	return found
}

func (c *Caution) fits(signs Signs) bool {
	for _, all := range c.when {
		if signs.hasAll(all) {
			return true
		}
	}
	return false
}

// With adds a sign, once.
func (s Signs) With(sign string) Signs {
	if slices.Contains(s, sign) {
		return s
	}
	return append(s, sign)
}

func (s Signs) hasAll(wanted []string) bool {
	for _, w := range wanted {
		if !slices.Contains(s, w) {
			return false
		}
	}
	return true
}

var columns = []string{"code", "when", "wear", "text", "source", "mark"}

// read takes the table in strictly: known columns only, no empty cell, no code
// twice.
func read(in io.Reader) ([]Caution, error) {
	r := csv.NewReader(in)
	rows, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("cautions: %w", err)
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != strings.Join(columns, ",") {
		return nil, fmt.Errorf("cautions: the columns must be %v", columns)
	}
	var list []Caution
	seen := map[string]bool{}
	for i, row := range rows[1:] {
		for k, cell := range row {
			if cell == "" || cell != strings.TrimSpace(cell) {
				return nil, fmt.Errorf("cautions row %d: %s is empty or has stray spaces", i+2, columns[k])
			}
		}
		if seen[row[0]] {
			return nil, fmt.Errorf("cautions row %d: %s stands twice", i+2, row[0])
		}
		seen[row[0]] = true
		c := Caution{Code: row[0], when: conditions(row[1]), Text: row[3], Source: row[4], Mark: row[5]}
		if row[2] != "-" {
			c.Wear = strings.Split(row[2], ";")
		}
		list = append(list, c)
	}
	return list, nil
}

// conditions reads the column when: words, of which one is enough; a word may
// join several signs with +, and always needs none.
func conditions(cell string) [][]string {
	var list [][]string
	for _, word := range strings.Fields(cell) {
		var all []string
		if word != "always" {
			all = strings.Split(word, "+")
		}
		list = append(list, all)
	}
	return list
}

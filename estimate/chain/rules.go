package chain

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
	"strings"
	"sync"
)

//go:embed rules.csv
var table []byte

// Rule is why one step has to stand before another.
type Rule struct {
	Code   string `json:"code"`
	Text   string `json:"text"` // with {metal}, {before} and the like where a finding names them
	Source string `json:"source"`
	Mark   string `json:"mark"` // how sure the source is: read, memory or practice
}

var load = sync.OnceValues(func() ([]Rule, error) { return read(bytes.NewReader(table)) })

// Rules lists every rule.
func Rules() []Rule {
	list, _ := load() // a test reads the embedded table
	return list
}

var ruleOf = sync.OnceValue(func() map[string]Rule {
	byCode := map[string]Rule{}
	for _, r := range Rules() {
		byCode[r.Code] = r
	}
	return byCode
})

func columns() []string { return []string{"code", "text", "source", "mark"} }

// read takes the table in strictly: known columns only, no empty cell, no code
// twice.
func read(in io.Reader) ([]Rule, error) {
	rows, err := csv.NewReader(in).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("rules: %w", err)
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != strings.Join(columns(), ",") {
		return nil, fmt.Errorf("rules: the columns must be %v", columns())
	}
	list := make([]Rule, 0, len(rows)-1)
	seen := map[string]bool{}
	for i, row := range rows[1:] {
		for k, cell := range row {
			if cell == "" || cell != strings.TrimSpace(cell) {
				return nil, fmt.Errorf("rules row %d: %s is empty or has stray spaces", i+2, columns()[k])
			}
		}
		if seen[row[0]] {
			return nil, fmt.Errorf("rules row %d: %s stands twice", i+2, row[0])
		}
		seen[row[0]] = true
		list = append(list, Rule{Code: row[0], Text: row[1], Source: row[2], Mark: row[3]})
	}
	return list, nil
}

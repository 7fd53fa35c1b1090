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

// The lettering rules: width and stroke of the letters and the spaces between
// them, as parts of the height. A 1 or an I is one stroke wide under all.
//
//go:embed letter_rules.csv
var letterRulesCSV string

// letterRule is one row, lengths as parts of the height.
type letterRule struct {
	name                   string
	width, stroke          float64
	gap, groupGap          float64
	mWidth, wWidth         float64
	fourExtra              float64 // by which a 4 is wider
	source, mark, footnote string
}

var letterRules = sync.OnceValues(func() ([]letterRule, error) { return readLetterRules(letterRulesCSV) })

// readLetterRules refuses an unknown column, a rule given twice, a row without
// source and strokes that leave no room between them.
func readLetterRules(text string) ([]letterRule, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], []string{"rule", "width", "stroke", "gap", "group_gap", "m_width", "w_width", "four_extra", "source", "mark", "note"}) {
		return nil, errors.New("the columns must be rule, width, stroke, gap, group_gap, m_width, w_width, four_extra, source, mark, note")
	}
	var rules []letterRule
	for i, row := range rows[1:] {
		r := letterRule{name: row[0], source: row[8], mark: row[9], footnote: row[10]}
		for k, into := range []*float64{&r.width, &r.stroke, &r.gap, &r.groupGap, &r.mWidth, &r.wWidth, &r.fourExtra} {
			if *into, err = fraction(row[1+k]); err != nil {
				return nil, fmt.Errorf("row %d: %w", i+2, err)
			}
		}
		switch {
		case r.name == "" || r.source == "" || !strings.Contains("HML", r.mark) || r.mark == "":
			return nil, fmt.Errorf("row %d: name, source or mark is missing", i+2)
		case slices.ContainsFunc(rules, func(o letterRule) bool { return o.name == r.name }):
			return nil, fmt.Errorf("row %d: %s is given twice", i+2, r.name)
		case !(r.stroke > 0 && r.stroke < 1.0/4 && min(r.width, r.mWidth, r.wWidth) > 3*r.stroke && r.gap > 0 && r.groupGap > 0 && r.fourExtra >= 0):
			return nil, fmt.Errorf("row %d: strokes and widths do not go together", i+2)
		}
		rules = append(rules, r)
	}
	return rules, nil
}

// fraction reads "2/3" or "1".
func fraction(text string) (float64, error) {
	top, bottom, found := strings.Cut(text, "/")
	if !found {
		bottom = "1"
	}
	a, errA := strconv.ParseUint(top, 10, 32)
	b, errB := strconv.ParseUint(bottom, 10, 32)
	if errA != nil || errB != nil || b == 0 {
		return 0, fmt.Errorf("%q is no fraction", text)
	}
	return float64(a) / float64(b), nil
}

// letterRuleOf finds a rule by name.
func letterRuleOf(name string) (letterRule, error) {
	rules, err := letterRules()
	if err != nil {
		return letterRule{}, err
	}
	for _, r := range rules {
		if r.name == name {
			return r, nil
		}
	}
	return letterRule{}, fmt.Errorf("there is no lettering rule %q", name)
}

func letterRuleNames() []string {
	rules, err := letterRules()
	if err != nil {
		return nil
	}
	names := make([]string, len(rules))
	for i, r := range rules {
		names[i] = r.name
	}
	return names
}

// widthOf is the width of a block letter under the rule.
func (r letterRule) widthOf(letter rune, wide bool) float64 {
	switch {
	case letter == '1' || letter == 'I':
		return r.stroke
	case letter == 'M' && wide:
		return r.mWidth
	case letter == 'W' && wide:
		return r.wWidth
	case letter == '4':
		return r.width + r.fourExtra
	}
	return r.width
}

package takeoff

import (
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"filmbuild/estimate/units"
)

var (
	plainNumber  = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][-+]?[0-9]+)?$`) // RFC 8259 section 6
	decimalComma = regexp.MustCompile(`^([-+]?[0-9]+),([0-9]+)(\s*[^0-9.,\s][^0-9.,]*)?$`)
	pointedThree = regexp.MustCompile(`^[-+]?[1-9][0-9]{0,2}(\.[0-9]{3})+(\D|$)`)
)

// value is what a cell of a column stands for in the job document. commas tells
// that the file may write decimals with a comma.
func (h heading) value(said string, commas bool) (any, *trouble) {
	said = strings.TrimSpace(said)
	c := h.column
	if c.holds != text && strings.HasPrefix(said, "{") || strings.HasPrefix(said, "[") && (c.holds == tree || c.holds == words) {
		v, err := parse([]byte(said))
		if err != nil {
			return nil, &trouble{"syntax", fmt.Sprintf("the cell begins like JSON text and is none: %s", err)}
		}
		return v, nil
	}
	switch c.holds {
	case number, money:
		if commas {
			var bad *trouble
			if said, bad = pointed(said); bad != nil {
				return nil, bad
			}
		}
		if c.holds == money {
			return said, nil
		}
		return h.number(said), nil
	case flag:
		switch strings.ToLower(said) {
		case "true", "yes":
			return true, nil
		case "false", "no":
			return false, nil
		}
	case words:
		list := []any{}
		for word := range strings.FieldsFuncSeq(said, func(r rune) bool { return r == ',' || r == ';' || r == '\n' }) {
			if word = strings.TrimSpace(word); word != "" {
				list = append(list, word)
			}
		}
		return list, nil
	}
	return said, nil
}

// number is a number of the wire where the cell has no unit of its own, and
// text with its unit otherwise: the reader of documents judges it.
func (h heading) number(said string) any {
	bare := plainNumber.MatchString(said)
	var x float64
	if !bare {
		var err error
		_, refused := units.Parse(said, h.column.suffix)
		if x, err = units.ParseBare(said, h.column.suffix); err != nil || (h.column.suffix != "" && !errors.Is(refused, units.ErrNoUnit)) {
			return said
		}
	}
	switch {
	case h.unit != "":
		return said + " " + h.unit
	case bare:
		return json.Number(said)
	}
	return json.Number(strconv.FormatFloat(x, 'g', -1, 64))
}

// pointed writes a decimal comma as a point. Where a comma or a point could as
// well part thousands it is refused.
func pointed(said string) (string, *trouble) {
	if pointedThree.MatchString(said) {
		return "", &trouble{"not_a_number", fmt.Sprintf("%q is ambiguous in a file whose columns are parted by semicolons: its point may part thousands; write it without, or with fewer or more decimals", said)}
	}
	parts := decimalComma.FindStringSubmatch(said)
	if parts == nil {
		return said, nil
	}
	if whole := strings.TrimLeft(parts[1], "+-"); len(parts[2]) == 3 && whole != "0" {
		return "", &trouble{"not_a_number", fmt.Sprintf("%q is ambiguous: its comma may part thousands or decimals; write %s%s or %s.%s0", said, parts[1], parts[2], parts[1], parts[2])}
	}
	return parts[1] + "." + parts[2] + parts[3], nil
}

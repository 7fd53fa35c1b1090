package takeoff

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"filmbuild/estimate/units"
)

// heading is what the head of a column says.
type heading struct {
	column   column
	unit     string // of bare numbers below it, where it is not the column's own
	currency string // of the money below it
}

// trouble is what is wrong with a cell.
type trouble struct{ code, detail string }

var bracketed = regexp.MustCompile(`^(.*?)\s*[\[(]\s*([^\])]*?)\s*[\])]$`)

// heading finds the column that a head means. The unit must be told by the name
// (span_m) or in brackets (span [m], span [ft]).
func (t *table) heading(said string) (heading, *trouble) {
	name, unit := plainName(said), ""
	if parts := bracketed.FindStringSubmatch(said); parts != nil {
		name, unit = plainName(parts[1]), parts[2]
	}
	if i, ok := t.byName[name]; ok && (unit == "" || t.columns[i].suffix != "" || t.columns[i].holds == money) {
		return withUnit(t.columns[i], said, unit)
	}
	candidates := t.byBase[name]
	if len(candidates) == 0 {
		if _, known := t.byName[name]; known {
			return heading{}, &trouble{"wrong_unit", fmt.Sprintf("the head %q names a unit, but %s has none; leave the brackets out", said, name)}
		}
		return heading{}, &trouble{"unknown_field", fmt.Sprintf("the table %s has no column %q%s", t.name, said, t.hint(name))}
	}
	var heads, fit []string
	var found heading
	for _, i := range candidates {
		c := t.columns[i]
		heads = append(heads, t.head(c))
		if h, bad := withUnit(c, said, unit); bad == nil && unit != "" && !slices.Contains(fit, c.path) {
			found, fit = h, append(fit, c.path)
		}
	}
	slices.Sort(heads)
	if len(fit) != 1 {
		return heading{}, &trouble{"wrong_unit", fmt.Sprintf("the head %q does not tell its unit, or has one that does not fit; write %s", said, strings.Join(slices.Compact(heads), " or "))}
	}
	return found, nil
}

// withUnit checks the unit of a head against its column.
func withUnit(c column, said, unit string) (heading, *trouble) {
	switch {
	case unit == "" || strings.EqualFold(unit, c.unit):
		return heading{column: c}, nil
	case c.holds == money:
		return heading{column: c, currency: strings.ToUpper(unit)}, nil
	case c.suffix == "percent" || c.suffix == "ratio":
		if unit == "%" {
			return heading{column: c, unit: unit}, nil
		}
	}
	if _, err := units.Parse("1 "+unit, c.suffix); err != nil {
		return heading{}, &trouble{"wrong_unit", fmt.Sprintf("the unit of the head %q does not fit: %s", said, err)}
	}
	return heading{column: c, unit: unit}, nil
}

// plainName writes a head as wire names are: small letters, _ for spaces.
func plainName(said string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(said), func(r rune) bool {
		return r == ' ' || r == '_' || r == '-' || r == '\t' || r == '\n' || r == '\u00a0'
	}), "_")
}

// hint tells columns that begin alike, or the first ones of the table.
func (t *table) hint(name string) string {
	var near []string
	for _, c := range t.columns {
		short := t.short(c)
		if name != "" && (strings.HasPrefix(short, name[:min(3, len(name))]) || strings.Contains(short, name)) {
			near = append(near, t.head(c))
		}
	}
	if len(near) > 0 {
		return "; there is " + strings.Join(near[:min(8, len(near))], ", ")
	}
	for _, c := range t.columns[:min(12, len(t.columns))] {
		near = append(near, t.head(c))
	}
	return "; it has " + strings.Join(near, ", ") + " and more: the sheet about of the template job.xlsx lists them all"
}

package units

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math/big"
	"slices"
	"strings"
)

//go:embed units.csv
var unitsTable string

//go:embed spellings.csv
var spellingsTable string

//go:embed wire.csv
var wireTable string

// The tables are read once and never change. They are part of the program, so a
// fault in them is found by the tests; should one slip through, every call
// returns it.
var tables, errTables = load(unitsTable, spellingsTable, wireTable)

// book is the three tables, ready to be looked up.
type book struct {
	exact    map[string]*unit // by spelling, case kept
	folded   map[string]*unit // by spelling in small letters
	targets  map[string]*target
	printed  map[string]*target // by the unit printed in SI; the first suffix that has it
	names    map[string]*unit
	suffixes []string
}

func load(unitRows, spellingRows, wireRows string) (*book, error) {
	b := &book{
		exact: map[string]*unit{}, folded: map[string]*unit{}, names: map[string]*unit{},
		targets: map[string]*target{}, printed: map[string]*target{},
	}
	tables := []struct {
		name, text string
		columns    []string
		add        func(row []string) error
	}{
		{"units.csv", unitRows, []string{"unit", "dimension", "factor", "offset", "source"}, b.addUnit},
		{"spellings.csv", spellingRows, []string{"unit", "case", "spellings"}, b.addSpellings},
		{"wire.csv", wireRows, []string{"suffix", "unit", "si", "us", "want"}, b.addTarget},
	}
	for _, table := range tables {
		rows, err := csv.NewReader(strings.NewReader(table.text)).ReadAll()
		if err != nil {
			return nil, fmt.Errorf("%s: %w", table.name, err)
		}
		if len(rows) == 0 || !slices.Equal(rows[0], table.columns) {
			return nil, fmt.Errorf("%s: the columns must be %v", table.name, table.columns)
		}
		for i, row := range rows[1:] {
			if err := table.add(row); err != nil {
				return nil, fmt.Errorf("%s, row %d: %w", table.name, i+2, err)
			}
		}
	}
	return b, nil
}

func (b *book) addUnit(row []string) error {
	name, source := row[0], row[4]
	factor, errFactor := parseQuotient(row[2])
	offset, errOffset := parseQuotient(row[3])
	switch {
	case b.names[name] != nil:
		return fmt.Errorf("%s is there twice", name)
	case source == "":
		return fmt.Errorf("%s has no source", name)
	case errFactor != nil:
		return errFactor
	case errOffset != nil:
		return errOffset
	case factor.isZero():
		return fmt.Errorf("the factor of %s is 0", name)
	}
	b.names[name] = &unit{name: name, dimension: parseDimension(row[1]), factor: factor, offset: offset}
	return nil
}

func (b *book) addSpellings(row []string) error {
	u := b.names[row[0]]
	if u == nil {
		return fmt.Errorf("no unit %s", row[0])
	}
	into := map[string]map[string]*unit{"any": b.folded, "exact": b.exact}[row[1]]
	if into == nil {
		return fmt.Errorf("case %q is neither any nor exact", row[1])
	}
	for _, spelling := range strings.Split(row[2], "|") {
		if b.exact[spelling] != nil || b.folded[spelling] != nil {
			return fmt.Errorf("%s is spelled twice", spelling)
		}
		into[spelling] = u
	}
	return nil
}

func (b *book) addTarget(row []string) error {
	t := &target{suffix: row[0], si: row[2], us: row[3], difference: row[0] == TemperatureDifference}
	if row[4] != "" {
		t.want = strings.Split(row[4], "|")
	}
	if b.targets[t.suffix] != nil {
		return fmt.Errorf("suffix %q is there twice", t.suffix)
	}
	unit, found := b.lookup(row[1])
	if named := b.names[row[1]]; !found && named != nil {
		unit, found = *named, true
	}
	if !found {
		return fmt.Errorf("no unit %s", row[1])
	}
	people := unit
	if t.us != "" {
		if people, found = b.lookup(t.us); !found || people.dimension != unit.dimension {
			return fmt.Errorf("%s cannot be printed in %s", row[1], t.us)
		}
	}
	t.unit = unit
	t.printIn(people)
	b.targets[t.suffix] = t
	b.suffixes = append(b.suffixes, t.suffix)
	if t.si != "" && b.printed[t.si] == nil {
		b.printed[t.si] = t
	}
	return nil
}

// parseQuotient reads "0.3048" or "1609.344/3600".
func parseQuotient(text string) (fraction, error) {
	over, under, divided := strings.Cut(text, "/")
	if !divided {
		under = "1"
	}
	numerator, okOver := new(big.Rat).SetString(over)
	denominator, okUnder := new(big.Rat).SetString(under)
	if !okOver || !okUnder || denominator.Sign() == 0 {
		return fraction{}, fmt.Errorf("%q is not a decimal or a quotient of decimals", text)
	}
	quotient := numerator.Quo(numerator, denominator)
	if quotient.Num().IsInt64() && quotient.Denom().IsInt64() {
		return fraction{num: quotient.Num().Int64(), den: quotient.Denom().Int64()}, nil
	}
	return fraction{wide: quotient}, nil
}

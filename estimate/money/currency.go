package money

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// The active codes of ISO 4217 table A.1 that have a minor unit, read in a public
// copy of February 2026; codes for metals, units of account and tests are left
// out. Rows marked M01 were also read elsewhere. Tables made for printing numbers
// (CLDR) differ from ISO 4217 and are not used.
//
//go:embed currencies.csv
var currencyTable string

// The table is part of the program and never changes; a fault in it is found by
// the tests, and CurrencyOf would return it.
var currencies, errCurrencies = loadCurrencies(currencyTable)

// mostMinorUnits is the most places any currency of the table has (CLF, UYW).
const mostMinorUnits = 4

// Currency is one row of ISO 4217. The zero value has no code and no minor
// units; CurrencyOf makes the others.
type Currency struct {
	code, name string
	minorUnits int32
}

// UnknownCurrencyError says that a code is not an active one.
type UnknownCurrencyError struct{ Code string }

func (e *UnknownCurrencyError) Error() string {
	return fmt.Sprintf("currency %.16q is not known; give a code of ISO 4217 in capitals, such as USD, GBP or EUR", e.Code)
}

// CurrencyOf returns the currency with a three-letter code in capitals.
//
// Error: *UnknownCurrencyError.
func CurrencyOf(code string) (Currency, error) {
	if errCurrencies != nil {
		return Currency{}, errCurrencies
	}
	c, found := currencies[code]
	if !found {
		return Currency{}, &UnknownCurrencyError{Code: code}
	}
	return c, nil
}

func (c Currency) Code() string { return c.code }

func (c Currency) Name() string { return c.name }

// MinorUnits is the number of decimal places of the currency's amounts.
func (c Currency) MinorUnits() int { return int(c.minorUnits) }

// Zero is no money at all, printed with the currency's places: "0.00".
func (c Currency) Zero() Amount { return Amount{minorUnits: c.minorUnits} }

func loadCurrencies(text string) (map[string]Currency, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("currencies.csv: %w", err)
	}
	if len(rows) == 0 || !slices.Equal(rows[0], []string{"code", "minor_units", "name", "source"}) {
		return nil, fmt.Errorf("currencies.csv: the columns must be code, minor_units, name, source")
	}
	table := make(map[string]Currency, len(rows))
	for _, row := range rows[1:] {
		places, err := strconv.Atoi(row[1])
		_, twice := table[row[0]]
		switch {
		case len(row[0]) != 3 || strings.Trim(row[0], "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "":
			return nil, fmt.Errorf("currencies.csv: %q is not three capitals", row[0])
		case twice:
			return nil, fmt.Errorf("currencies.csv: %s is there twice", row[0])
		case err != nil || places < 0 || places > mostMinorUnits:
			return nil, fmt.Errorf("currencies.csv: minor units %q of %s are not 0 to %d", row[1], row[0], mostMinorUnits)
		case row[2] == "" || row[3] == "":
			return nil, fmt.Errorf("currencies.csv: %s has no name or no source", row[0])
		}
		table[row[0]] = Currency{code: row[0], name: row[2], minorUnits: int32(places)}
	}
	return table, nil
}

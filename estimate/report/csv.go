package report

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"filmbuild/estimate"
)

// Tables are the names of the tables that CSV prints.
func Tables() []string {
	return []string{"steps", "order", "areas", "budget", "buyers", "lines", "hours", "masking", "colours", "funding", "narrative", "range", "drivers", "curve", "inputs"}
}

// RangeTables are those of the tables that tell the range, for which trials must
// be made.
func RangeTables() []string { return []string{"range", "drivers", "curve", "inputs"} }

// CSV returns one table of the estimate as RFC 4180 text in UTF-8: a head with the
// units in the names, SI, a point for the decimals, CRLF at the ends of lines,
// numbers to ten significant digits and money to the minor unit. Text
// that a spreadsheet would run as a formula is made harmless with a leading
// apostrophe; numbers never are.
func CSV(e *estimate.Estimate, table string) ([]byte, error) {
	var rows [][]string
	var err error
	switch table {
	case "steps":
		rows = stepRows(e)
	case "order":
		rows = orderRows(e)
	case "areas":
		rows = areaRows(e)
	case "budget":
		rows = budgetRows(e)
	case "buyers":
		rows = buyerRows(e)
	case "lines":
		rows = lineRows(e)
	case "hours":
		rows = hourRows(e)
	case "masking":
		rows = maskingRows(e)
	case "colours":
		rows = colourRows(e)
	case "funding":
		rows, err = fundingRows(e)
	case "narrative":
		rows, err = narrativeRows(e)
	case "range":
		rows = rangeRows(e)
	case "drivers":
		rows = driverRows(e)
	case "inputs":
		rows = inputRows(e)
	case "curve":
		rows = curveRows(e)
	default:
		return nil, fmt.Errorf("there is no table %q; there is %s", table, strings.Join(Tables(), ", "))
	}
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// Marked puts the byte order mark in front of a table: without it some
// spreadsheets take UTF-8 for an older code, and with it other readers find three
// bytes before the first head. It is for who asks.
//
// Source: The Unicode Standard, section 23.8.
func Marked(table []byte) []byte { return append([]byte("\ufeff"), table...) }

func stepRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"step", "operation", "area_m2", "litres", "kilograms", "masking_tape_m", "hours", "waste_kg", "dry_film_kg", "removed_film_kg",
		"material_cost_" + e.Currency, "labour_cost_" + e.Currency, "cost_" + e.Currency, "labour"}}
	for i := range e.Steps {
		s := &e.Steps[i]
		rows = append(rows, []string{text(s.ID), s.Operation, number(s.AreaM2), number(s.Litres), number(s.Kilograms), number(s.MaskingTapeM), number(s.Hours),
			number(s.WasteKg), number(s.DryFilmKg), number(s.RemovedKg), s.MaterialCost.String(), s.LabourCost.String(), s.Cost.String(), s.Labour})
	}
	return rows
}

func orderRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"product", "name", "supplier", "needed", "unit", "pack", "count", "price_" + e.Currency, "line_cost_" + e.Currency, "left_over",
		"part", "order_by", "from_stock", "from_donations", "to_buy", "left_over_note"}}
	for _, line := range e.Order {
		lead := []string{text(line.Product), text(line.Name), text(line.Supplier), number(line.Needed), line.Unit}
		tail, more := []string{line.Cost.String(), number(line.LeftOver)}, []string{line.OrderBy, number(line.FromStock), number(line.FromDonations), number(line.ToBuy), line.LeftOverNote}
		if len(line.Packs) == 0 {
			rows = append(rows, append(append(append(append(lead, "", "", ""), tail...), ""), more...))
		}
		for k, p := range line.Packs {
			if k > 0 { // the line's own figures stand once, so that columns can be summed
				lead, tail = []string{text(line.Product), text(line.Name), text(line.Supplier), "", line.Unit}, []string{"", ""}
				more = []string{line.OrderBy, "", "", "", ""}
			}
			row := append(append([]string(nil), lead...), number(p.Pack), strconv.Itoa(p.Count), p.Price.String())
			rows = append(rows, append(append(append(row, tail...), p.Part), more...))
		}
	}
	return rows
}

func areaRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"component", "kind", "count", "face", "area_m2", "edge_m", "accuracy_percent"}}
	for _, a := range e.Areas {
		for _, f := range a.Faces {
			rows = append(rows, []string{text(a.Component), a.Kind, strconv.Itoa(a.Count), f.Face, number(f.AreaM2), number(f.EdgeM), number(a.AccuracyPercent)})
		}
	}
	return rows
}

func budgetRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"category", "cash_" + e.Currency, "in_kind_" + e.Currency, "total_" + e.Currency}}
	for _, c := range e.Budget.Categories {
		rows = append(rows, []string{text(c.Category), c.Cash.String(), c.InKind.String(), c.Total.String()})
	}
	return append(rows, []string{"total", e.Budget.CashNeeded.String(), e.Budget.InKind.String(), e.Budget.Total.String()})
}

// digits is how many significant digits a number of a table has: more than any
// tape measure gives, and few enough for a cell. JSON has every digit.
const digits = 10

// number writes a number with at most ten significant digits and no exponent.
func number(value float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(value, 'g', digits, 64), 64)
	if err != nil {
		rounded = value // what was just printed reads back, or the value was no number to begin with
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// text makes a cell harmless that a spreadsheet would take for a formula.
//
// Source: OWASP, CSV injection: cells that start with = + - @ TAB CR, some
// programs also with the full-width forms; spaces before them are passed over.
func text(cell string) string {
	trimmed := strings.TrimLeft(cell, " \u00a0\n")
	if first, _ := utf8.DecodeRuneInString(trimmed); trimmed != "" && strings.ContainsRune("=+-@\t\r＝＋－＠", first) {
		return "'" + cell
	}
	return cell
}

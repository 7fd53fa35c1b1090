package workbook

import (
	"fmt"
	"strings"

	"filmbuild/estimate"
	"filmbuild/surfaces/quantity"
)

func packText(packs []estimate.OrderPack, unit string) string {
	var list []string
	for _, p := range packs {
		text := fmt.Sprintf("%d × %g %s", p.Count, p.Pack, unit)
		if p.Part != "" {
			text += " " + p.Part
		}
		list = append(list, text)
	}
	return strings.Join(list, ", ")
}

// writeSummary is the first sheet: what the job takes, in one screen.
func (b *book) writeSummary() {
	s := &b.summary
	e := b.graph.Estimate
	s.add(cell{value: e.Job, style: title})
	s.add(cell{value: "Estimate by filmbuild " + e.EngineVersion + ". Every figure follows the sheet Inputs; the sheet Working shows how.", style: note})
	s.add(empty())
	s.add(headings("Money, "+e.Currency, "", "", "")...)
	budget := func(name, what, why string) {
		s.add(text(what), b.figure(quantity.Node{Kind: "budget", Quantity: name}, cash), empty(), words(why))
	}
	budget("total", "Total", "cash needed and in kind")
	budget("cash_needed", "Cash needed", "what will be paid, with contingency and tax")
	budget("in_kind", "In kind", "the value of volunteers' hours and of gifts")
	budget("contingency", "Contingency", "within the cash needed")
	if !e.Budget.ManagementReserve.IsZero() {
		budget("management_reserve", "Management reserve", "within the cash needed")
	}
	budget("tax", "Tax", "on top of prices that do not hold it, within the cash needed")
	s.add(empty())
	s.add(headings("Quantities", "", "", "")...)
	if len(e.Areas) > 0 {
		s.add(text("Area of all parts"), worked(b.parts.at("F", len(b.parts.rows)), e.Totals.AreaM2, figure), text("m²"))
	}
	if len(e.Steps) > 0 {
		for _, row := range []struct {
			what, name, unit string
			value            float64
		}{
			{"Person-hours", "hours", "h", e.Totals.Hours}, {"Liquids from the tins", "litres", "L", e.Totals.Litres}, {"Abrasive bought", "kilograms", "kg", e.Totals.Kilograms},
			{"Masking tape", "masking_tape_m", "m", e.Totals.MaskingTapeM}, {"Waste", "waste_kg", "kg", e.Totals.WasteKg},
		} {
			s.add(text(row.what), worked(b.stepSum(row.name), row.value, figure), text(row.unit))
		}
	}
	s.add(empty())
	s.add(cell{value: "Work of this kind can hurt people: the cautions are on the sheet Sources. Local codes, safety data sheets and licensed practice come first.", style: note})
}

// writeRanges gives the figures of a simulation, which no formula follows.
func (b *book) writeRanges() {
	s := &b.ranges
	s.add(cell{value: "Ranges", style: title})
	s.add(cell{value: "What the engine drew; these numbers do not follow changes on the sheet Inputs.", style: note})
	if b.graph.Estimate.Range != nil {
		b.percentiles(b.graph.Estimate.Range)
	}
	s.add(empty())
	s.add(cell{value: "How far each input may be off", style: section})
	s.add(headings("Input", "Low", "Likely", "High", "Distribution", "Source")...)
	s.widths[5] = 60
	for _, u := range b.graph.Uncertain {
		s.add(words(u.Name), cell{value: u.Spread.Low, style: figure}, cell{value: u.Spread.Likely, style: figure}, cell{value: u.Spread.High, style: figure}, text(u.Spread.Distribution), words(u.Source))
	}
}

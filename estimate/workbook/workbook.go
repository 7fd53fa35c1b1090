package workbook

import (
	"io"

	"github.com/xuri/excelize/v2"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// book is a workbook in the making.
type book struct {
	graph  *estimate.Graph
	cells  map[int]string    // vertex of the graph -> reference to the cell with its value
	faces  map[int]string    // vertex of a face -> cell with its measured area
	choice map[string]string // node of the order -> cell with the cheapest cover
	price  map[string]string // what a pack is called -> cell with its price

	summary, parts, steps, order, budget, ranges, working, sources, inputs, packs sheet
}

// Write writes the workbook of an estimate. The errors are those of writing.
func Write(w io.Writer, g *estimate.Graph) error {
	b := &book{graph: g, cells: map[int]string{}, faces: map[int]string{},
		summary: sheet{name: "Summary", widths: []float64{34, 18, 10, 60}},
		parts:   sheet{name: "Parts", widths: []float64{24, 26, 12, 8, 14, 14, 12, 12, 60}},
		steps:   sheet{name: "Steps", widths: []float64{18, 30, 12, 12, 10, 12, 12, 10, 12, 14, 14, 14}},
		order:   sheet{name: "Order", widths: []float64{28, 44, 20, 12, 12, 12, 8, 12, 12, 14}},
		budget:  sheet{name: "Budget", widths: []float64{44, 20, 12, 16, 16, 16}},
		ranges:  sheet{name: "Ranges", widths: []float64{40, 16, 16, 16, 16, 16}},
		working: sheet{name: "Working", widths: []float64{26, 28, 34, 16, 10, 50, 60}, frozen: 3},
		sources: sheet{name: "Sources", widths: []float64{18, 70, 14, 10, 70}},
		inputs:  sheet{name: "Inputs", widths: []float64{52, 18, 12, 70, 40}, frozen: 3},
		packs:   sheet{name: "Packs", widths: []float64{30, 14, 14, 14, 14, 14, 14}},
	}
	b.writeInputs()
	b.writeOrderChoices()
	b.writeWorking()
	b.writeParts()
	b.writeSteps()
	b.writeOrder()
	b.writeBudget()
	b.writeRanges()
	b.writeSources()
	b.writeSummary()
	return b.save(w)
}

func (b *book) save(w io.Writer) error {
	f := excelize.NewFile()
	defer f.Close() //nolint:errcheck // it holds nothing outside memory
	currency, err := money.CurrencyOf(b.graph.Estimate.Currency)
	if err != nil {
		return err
	}
	styles, err := addStyles(f, currency.MinorUnits())
	if err != nil {
		return err
	}
	all := []*sheet{&b.summary, &b.parts, &b.steps, &b.order, &b.budget, &b.ranges, &b.working, &b.sources, &b.inputs, &b.packs}
	for i, s := range all {
		if i == 0 {
			err = f.SetSheetName("Sheet1", s.name)
		} else {
			_, err = f.NewSheet(s.name)
		}
		if err == nil {
			err = layOut(f, s.name)
		}
		if err == nil {
			err = s.write(f, styles)
		}
		if err != nil {
			return err
		}
	}
	return writeInOrder(w, f)
}

// layOut makes a sheet print across one landscape page. It comes before the rows
// are streamed: what follows them is left out of the file.
func layOut(f *excelize.File, sheet string) error {
	landscape, paper, width, height, fit := "landscape", 9, 1, 0, true
	if err := f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &landscape, Size: &paper, FitToWidth: &width, FitToHeight: &height}); err != nil {
		return err
	}
	return f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit})
}

// figure is a cell that shows a node of the graph, or nothing where it has none.
func (b *book) figure(node quantity.Node, s style) cell {
	k, known := b.graph.Model.Find(node)
	if !known {
		return cell{value: 0.0, style: s}
	}
	return worked(b.cells[k], b.graph.Model.Vertices[k].Value, s)
}

package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"strconv"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/report"
	"filmbuild/estimate/target"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

// solve prints what a budget or a stock covers.
func solve(args []string, s streams) int {
	flags := flag.NewFlagSet("solve", flag.ContinueOnError)
	format := flags.String("format", "table", "table or json")
	system := flags.String("units", "si", "si or us, for the table")
	name := flags.String("example", example.Default, "a built-in example, where no file is given")
	question := map[string]any{}
	for flagName, doc := range map[string]string{"find": "area or film", "budget": "the most that may be spent", "money": "what the budget pays for: cash_needed or total"} {
		flags.Func(flagName, doc, func(value string) error { question[flagName] = value; return nil })
	}
	for flagName, doc := range map[string]string{"components": "components that grow or shrink", "steps": "steps whose film changes"} {
		flags.Func(flagName, doc, func(value string) error { question[flagName] = strings.Split(value, ","); return nil })
	}
	var stock []map[string]any
	flags.Func("stock", "what there is of a product", func(value string) error {
		product, quantity, _ := strings.Cut(value, "=")
		number, err := strconv.ParseFloat(quantity, 64)
		stock = append(stock, map[string]any{"product": product, "quantity": number})
		return err
	})
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	shown, err := units.ParseSystem(*system)
	if err == nil && *format != "table" && *format != "json" {
		err = fmt.Errorf("format %q is not known; give table or json", *format)
	}
	data, readErr := input(flags.Arg(0), *name, s)
	if err = errors.Join(err, readErr); err != nil {
		fmt.Fprintln(s.err, err)
		return lineFault
	}
	if stock != nil {
		question["stock"] = stock
	}
	return withCatalogue(s, func(catalogue *products.Catalogue) ([]byte, error) {
		a, err := target.Ask(context.Background(), estimate.NewReader(beside(flags.Arg(0))), catalogue, data, question)
		switch {
		case err != nil:
			return nil, err
		case *format == "json":
			return indented(a)
		}
		return []byte(report.Solution(a, shown)), nil
	})
}

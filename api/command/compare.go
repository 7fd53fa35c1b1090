package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"slices"

	"filmbuild/estimate"
	"filmbuild/estimate/compare"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

// compareWays prints ways of doing a job side by side.
func compareWays(args []string, s streams) int {
	flags := flag.NewFlagSet("compare", flag.ContinueOnError)
	format := flags.String("format", "table", "table, json or csv")
	system := flags.String("units", "si", "si or us, for the table")
	trials := trialFlags(flags)
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	shown, err := units.ParseSystem(*system)
	if err == nil && !slices.Contains([]string{"table", "json", "csv"}, *format) {
		err = fmt.Errorf("format %q is not known; give table, json or csv", *format)
	}
	if trials.single {
		err = errors.Join(err, errors.New("ways are compared trial by trial: -single does not fit"))
	}
	data, readErr := input(flags.Arg(0), "", s)
	if flags.Arg(0) == "" {
		data, readErr = compare.Example()
	}
	if err = errors.Join(err, trials.check(*format, ""), readErr); err != nil {
		fmt.Fprintln(s.err, err)
		return lineFault
	}
	return withCatalogue(s, func(catalogue *products.Catalogue) ([]byte, error) {
		var r *compare.Result
		err := trials.during(s, func(ctx context.Context, o ranges.Options) error {
			var err error
			r, err = compare.Work(ctx, estimate.NewReader(beside(flags.Arg(0))), catalogue, data, o)
			return err
		})
		switch {
		case err != nil:
			return nil, err
		case *format == "json":
			return indented(r)
		case *format == "csv":
			return report.ComparisonCSV(r)
		}
		return []byte(report.Comparison(r, shown)), nil
	})
}

package command

import (
	"errors"
	"flag"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

// work prints the estimate of a job.
func work(args []string, s streams) int {
	flags := flag.NewFlagSet("estimate", flag.ContinueOnError)
	var form forms.Wanted
	flags.StringVar(&form.Format, "format", "table", strings.Join(forms.Formats(), ", ")+" (send xlsx and pdf into a file)")
	flags.StringVar(&form.Table, "table", "steps", "which table, for csv")
	flags.BoolVar(&form.Marked, "bom", false, "byte order mark before the csv, for spreadsheets")
	flags.StringVar(&form.Pages, "pages", "report", "report or job-sheets, for pdf")
	flags.StringVar(&form.Paper, "paper", "a4", "a4 or letter, for pdf")
	flags.StringVar(&form.Date, "date", "", "printed on the pdf, as 2026-11-25")
	trials := trialFlags(flags)
	system := flags.String("units", "si", "si or us, for the table and the pdf")
	name := flags.String("example", example.Default, "a built-in example, where no file is given")
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	shown, err := units.ParseSystem(*system)
	form.System = shown
	form.Check(func(_, detail string) { err = errors.Join(err, errors.New(detail)) })
	err = errors.Join(err, trials.check(form.Format, form.Table))
	data, readErr := input(flags.Arg(0), *name, s)
	if err = errors.Join(err, readErr); err != nil {
		return refused(err, s.err, s)
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	worked, err := estimate.NewReader(beside(flags.Arg(0))).Work(data, catalogue)
	if err == nil {
		err = trials.add(worked, form.Format, form.Table, s)
	}
	if err != nil {
		return faulty(err, s.err)
	}
	if err := forms.Write(s.out, worked, form); err != nil {
		return broken(err, s)
	}
	return done
}

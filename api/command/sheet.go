package command

import (
	"errors"
	"flag"
	"fmt"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/sheets"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

// draw prints a sheet of a job's markings.
func draw(args []string, s streams) int {
	flags := flag.NewFlagSet("sheet", flag.ContinueOnError)
	wanted := sheets.Wanted{Layer: "all"}
	flags.StringVar(&wanted.Marking, "marking", "", "id of a marking")
	face := flags.String("face", "", "component/face, for its placing sheet")
	cut := flags.Bool("cut", false, "the lines to cut, of a marking")
	flags.BoolVar(&wanted.OtherSide, "other", false, "the mirrored places of a face that is the same on both sides")
	flags.StringVar(&wanted.Units, "units", "si", "si or us")
	flags.StringVar(&wanted.Date, "date", "", "printed as it is")
	name := flags.String("example", example.Default, "a built-in example, where no file is given")
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	if *cut {
		wanted.Layer = "cut"
	}
	wanted.Component, wanted.Face, _ = strings.Cut(*face, "/")
	_, err := units.ParseSystem(wanted.Units)
	data, readErr := input(flags.Arg(0), *name, s)
	if err = errors.Join(err, readErr); err != nil {
		return refused(err, s.err, s)
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	job, e, err := estimate.NewReader(beside(flags.Arg(0))).Worked(data, catalogue)
	if err != nil {
		return faulty(err, s.err)
	}
	var refused fault.List
	picture, err := sheets.Draw(job, e, wanted, refused.At(""))
	if err != nil {
		return broken(err, s)
	}
	if err := refused.Err(); err != nil {
		var list *fault.Error
		errors.As(err, &list)
		for _, f := range list.Faults {
			fmt.Fprintln(s.err, f.Detail)
		}
		return lineFault
	}
	if _, err := s.out.Write(picture); err != nil {
		return broken(err, s)
	}
	return done
}

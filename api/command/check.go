package command

import (
	"flag"
	"fmt"

	"filmbuild/estimate"
	"filmbuild/products"
)

// check prints every fault of a job.
func check(args []string, s streams) int {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	if flags.NArg() == 0 {
		fmt.Fprintf(s.err, "check wants a file\n\n%s", usage)
		return lineFault
	}
	data, err := input(flags.Arg(0), "", s)
	if err != nil {
		return refused(err, s.out, s)
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	if _, err := estimate.NewReader(beside(flags.Arg(0))).Estimate(data, catalogue); err != nil {
		return faulty(err, s.out)
	}
	fmt.Fprintln(s.out, "no faults")
	return done
}

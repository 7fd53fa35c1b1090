package command

import (
	"flag"
	"fmt"

	"filmbuild/estimate"
	"filmbuild/products"
)

func version(args []string, s streams) int {
	if code, ok := parse(flag.NewFlagSet("version", flag.ContinueOnError), args, 0, s); !ok {
		return code
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	fmt.Fprintf(s.out, "filmbuild engine %s, catalogue %s\n", estimate.EngineVersion, catalogue.Version())
	return done
}

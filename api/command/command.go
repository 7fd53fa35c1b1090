// Package command is the command line: each command reads its words and files,
// calls the engine and prints. It computes nothing.
package command

import (
	"errors"
	"flag"
	"fmt"
	"io"
)

const usage = `filmbuild works out what it takes to strip a large static machine and repaint it.

  filmbuild [serve] [-addr 127.0.0.1:8080]
        the page and the API
  filmbuild estimate [-format table|json|csv|svg|xlsx|pdf] [-table TABLE] [-bom]
                     [-units si|us] [-trials N] [-seed N] [-single]
                     [-pages report|job-sheets] [-paper a4|letter] [-date DATE]
                     [-example NAME] [FILE|-]
        work a job out; without a file, the built-in example; TABLE is for
        csv: steps, order, areas, budget, buyers, lines, hours, funding, narrative,
        range, drivers, curve, inputs; svg draws the range of the total, from N trials;
        -single leaves the range out
  filmbuild sheet [-marking ID [-cut] | -face COMPONENT/FACE [-other]]
                  [-units si|us] [-date TEXT] [-example NAME] [FILE|-]
        draw a marking at true scale, its lines to cut, or all places on a face,
        as SVG
  filmbuild compare [-format table|json|csv] [-units si|us] [-trials N] [-seed N]
                    [FILE|-]
        set ways of doing a job side by side; without a file, three ways to
        bare metal
  filmbuild solve -find area|film [-budget AMOUNT] [-stock PRODUCT=QUANTITY ...]
                  [-components ID,ID] [-steps ID,ID] [-money cash_needed|total]
                  [-format table|json] [-example NAME] [FILE|-]
        the largest area, or the thickest film plan, that a budget or a stock
        covers
  filmbuild import FILE...
        the job that tables make (CSV, XLSX), as JSON; the names of CSV files tell
        what they hold: components, steps, products, items
  filmbuild export [-format xlsx|zip] [-example NAME] [FILE|-]
        a job as tables to fill in: a workbook, or CSV files in an archive
  filmbuild check FILE|-
        list every fault of a job
  filmbuild version

Exit codes: 0 done, 1 the job is at fault, 2 the command line is.
`

// Exit codes.
const (
	done      = 0
	jobFault  = 1
	lineFault = 2
)

// Run runs one command line, without the program's name, on the given streams and
// returns its exit code: 0 done, 1 the job is at fault, 2 the command line is.
func Run(args []string, in io.Reader, out, err io.Writer) int {
	return run(args, streams{in: in, out: out, err: err})
}

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// run runs one command and returns its exit code.
func run(args []string, s streams) int {
	name := "serve"
	if len(args) > 0 && args[0] != "" && args[0][0] != '-' {
		name, args = args[0], args[1:]
	} else if len(args) > 0 && (args[0] == "-h" || args[0] == "-help" || args[0] == "--help") {
		name = "help"
	}
	commands := map[string]func([]string, streams) int{"serve": serve, "estimate": work, "sheet": draw, "import": importTables, "export": exportTables, "check": check, "compare": compareWays, "solve": solve, "version": version, "help": help}
	command, known := commands[name]
	if !known {
		fmt.Fprintf(s.err, "there is no command %q\n\n%s", name, usage)
		return lineFault
	}
	return command(args, s)
}

// parse reads flags; it answers false with the exit code where that ends the
// command.
func parse(flags *flag.FlagSet, args []string, most int, s streams) (int, bool) {
	flags.SetOutput(s.err)
	flags.Usage = func() { fmt.Fprint(s.err, usage) }
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return done, false
	} else if err != nil {
		return lineFault, false
	}
	if flags.NArg() > most {
		fmt.Fprintf(s.err, "%q is one word too many\n\n%s", flags.Arg(most), usage)
		return lineFault, false
	}
	return done, true
}

func help(_ []string, s streams) int {
	fmt.Fprint(s.out, usage)
	return done
}

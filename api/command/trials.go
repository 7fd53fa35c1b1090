package command

import (
	"context"
	"errors"
	"flag"
	"os"
	"os/signal"
	"slices"
	"syscall"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/report"
)

// trialling is what the command line says about trials.
type trialling struct {
	trials int
	seed   uint64
	single bool
	flags  *flag.FlagSet
}

func trialFlags(flags *flag.FlagSet) *trialling {
	t := &trialling{flags: flags}
	flags.IntVar(&t.trials, "trials", ranges.UsualTrials, "how many times every uncertain number is drawn")
	flags.Uint64Var(&t.seed, "seed", ranges.UsualSeed, "of the draws")
	flags.BoolVar(&t.single, "single", false, "single figures only: no trials")
	return t
}

// asked reports whether the command line names trials or a seed.
func (t *trialling) asked() bool {
	asked := false
	t.flags.Visit(func(f *flag.Flag) { asked = asked || f.Name == "trials" || f.Name == "seed" })
	return asked
}

func (t *trialling) check(format, table string) error {
	if t.single && (t.asked() || format == "svg" || slices.Contains(report.RangeTables(), table)) {
		return errors.New("-single leaves the range out, and something else here asks for it")
	}
	var faults fault.List
	t.options().Check(faults.At(""))
	return faults.Err()
}

func (t *trialling) options() ranges.Options { return ranges.Options{Trials: t.trials, Seed: t.seed} }

// add makes the trials: for the table always, for the other forms where they are
// asked for or the job gives ranges.
func (t *trialling) add(w *estimate.Worked, format, table string, s streams) error {
	wanted := slices.Contains([]string{"table", "svg", "xlsx", "pdf"}, format) || t.asked() || w.Ranged() || (format == "csv" && slices.Contains(report.RangeTables(), table))
	if t.single || !wanted {
		return nil
	}
	return t.during(s, func(ctx context.Context, o ranges.Options) error { return ranges.Add(ctx, w, o) })
}

// during makes trials that an interrupt ends, with a line that tells how far they
// are.
func (t *trialling) during(s streams, do func(context.Context, ranges.Options) error) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	o := t.options()
	progress := progressOf(s.err)
	o.Progress = progress.report
	err := do(ctx, o)
	progress.end()
	return err
}

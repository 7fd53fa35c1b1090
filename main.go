// Command filmbuild estimates what it takes to strip a large static machine to
// bare metal and repaint it.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/estimate/compare"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/report"
	"filmbuild/estimate/sheets"
	"filmbuild/estimate/takeoff"
	"filmbuild/estimate/target"
	"filmbuild/estimate/units"
	"filmbuild/products"
	"filmbuild/surfaces/mesh"
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

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

func main() {
	os.Exit(run(os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
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

// progress tells how far a long run is, once a second from the first on.
type progress struct {
	out         io.Writer
	start, last time.Time
	shown       bool
}

func progressOf(out io.Writer) *progress {
	now := time.Now()
	return &progress{out: out, start: now, last: now}
}

func (p *progress) report(done, total int) {
	if now := time.Now(); now.Sub(p.last) >= time.Second {
		p.last, p.shown = now, true
		left := time.Duration(float64(now.Sub(p.start)) * float64(total-done) / float64(done))
		fmt.Fprintf(p.out, "\r%3.0f %% of %d trials, %s left ", 100*float64(done)/float64(total), total, left.Round(time.Second))
	}
}

// end closes the line, where one was begun.
func (p *progress) end() {
	if p.shown {
		fmt.Fprintln(p.out)
	}
}

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

func indented(value any) ([]byte, error) {
	text, err := json.MarshalIndent(value, "", "  ")
	return append(text, '\n'), err
}

// withCatalogue prints what a function makes of the catalogue; its error is the
// job's.
func withCatalogue(s streams, do func(*products.Catalogue) ([]byte, error)) int {
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	text, err := do(catalogue)
	if err != nil {
		return faulty(err, s.err)
	}
	if _, err := s.out.Write(text); err != nil {
		return broken(err, s)
	}
	return done
}

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

// importTables prints the job that tables make.
func importTables(args []string, s streams) int {
	flags := flag.NewFlagSet("import", flag.ContinueOnError)
	if code, ok := parse(flags, args, takeoff.MostFiles, s); !ok {
		return code
	}
	if flags.NArg() == 0 {
		fmt.Fprintf(s.err, "import wants files\n\n%s", usage)
		return lineFault
	}
	job, err := tabled(flags.Args())
	if err != nil {
		return refused(err, s.err, s)
	}
	if _, err := s.out.Write(job); err != nil {
		return broken(err, s)
	}
	return done
}

// exportTables writes a job as tables.
func exportTables(args []string, s streams) int {
	flags := flag.NewFlagSet("export", flag.ContinueOnError)
	format := flags.String("format", "xlsx", "xlsx, or zip for CSV files in an archive")
	name := flags.String("example", example.Default, "a built-in example, where no file is given")
	if code, ok := parse(flags, args, 1, s); !ok {
		return code
	}
	write, known := map[string]func([]byte, *estimate.Reader, *products.Catalogue) ([]byte, error){"xlsx": takeoff.Export, "zip": takeoff.ExportArchive}[*format]
	if !known {
		fmt.Fprintf(s.err, "format %q is not known; give xlsx or zip\n", *format)
		return lineFault
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	job, err := input(flags.Arg(0), *name, s)
	if err != nil {
		return refused(err, s.err, s)
	}
	data, err := write(job, estimate.NewReader(beside(flags.Arg(0))), catalogue)
	if err != nil {
		return faulty(err, s.err)
	}
	if _, err := s.out.Write(data); err != nil {
		return broken(err, s)
	}
	return done
}

// tabled makes a job of tables. The error is one of a file, or a *tablesError.
func tabled(names []string) ([]byte, error) {
	var files []takeoff.File
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		files = append(files, takeoff.File{Name: filepath.Base(name), Data: data})
	}
	catalogue, err := products.Load()
	if err != nil {
		return nil, err
	}
	job, err := takeoff.Import(files, estimate.NewReader(beside(names[0])), catalogue)
	if err != nil {
		return nil, &tablesError{err}
	}
	return job, nil
}

// tablesError says that tables are at fault and not the command line.
type tablesError struct{ cause error }

func (e *tablesError) Error() string { return e.cause.Error() }

// refused tells why there is no job: the faults of its tables on out, or what is
// wrong with the command line.
func refused(err error, out io.Writer, s streams) int {
	var tables *tablesError
	if errors.As(err, &tables) {
		return faulty(tables.cause, out)
	}
	fmt.Fprintln(s.err, err)
	return lineFault
}

// input reads a job from a file, a table or a workbook of tables among them,
// from standard input or from the examples.
func input(file, name string, s streams) ([]byte, error) {
	switch file {
	case "":
		e, err := example.Find(name)
		return e.Job, err
	case "-":
		return io.ReadAll(io.LimitReader(s.in, api.MostBody))
	}
	if ending := strings.ToLower(filepath.Ext(file)); ending == ".csv" || ending == ".xlsx" {
		return tabled([]string{file})
	}
	return os.ReadFile(file)
}

// beside finds the meshes that a job names among the files beside it.
func beside(job string) estimate.Meshes {
	return func(name string, o mesh.Options) (mesh.Result, error) {
		if !filepath.IsLocal(name) {
			return mesh.Result{}, errors.New("a mesh must lie beside the job, or in a folder there")
		}
		return mesh.MeasureFile(context.Background(), filepath.Join(filepath.Dir(job), name), o)
	}
}

// faulty prints the faults of a job, one to a line.
func faulty(err error, out io.Writer) int {
	var list *fault.Error
	if !errors.As(err, &list) {
		fmt.Fprintln(out, err)
		return jobFault
	}
	for _, f := range list.Faults {
		at := f.Pointer
		switch {
		case f.Cell != nil:
			at = f.Cell.String()
		case at == "":
			at = "the job"
		}
		fmt.Fprintf(out, "%s: %s [%s]\n", at, f.Detail, f.Code)
	}
	return jobFault
}

func broken(err error, s streams) int {
	fmt.Fprintln(s.err, "filmbuild is broken:", err)
	return lineFault
}

// serve answers requests until it is told to stop; what is under way then gets
// time to finish.
func serve(args []string, s streams) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	address := flags.String("addr", "127.0.0.1:8080", "host:port to listen on")
	if code, ok := parse(flags, args, 0, s); !ok {
		return code
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	listener, err := net.Listen("tcp", *address)
	if err != nil {
		fmt.Fprintln(s.err, err)
		return lineFault
	}
	slog.SetDefault(slog.New(slog.NewTextHandler(s.err, nil)))
	server := &http.Server{Handler: api.Handler(catalogue), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 30 * time.Second, WriteTimeout: 60 * time.Second, IdleTimeout: 2 * time.Minute}
	fmt.Fprintf(s.out, "filmbuild: open http://%s/ in a browser; Ctrl+C ends it\n", listener.Addr())
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	go func() {
		<-ctx.Done()
		patience, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		defer cancel()
		_ = server.Shutdown(patience) // what does not finish in time is cut off
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return broken(err, s)
	}
	return done
}

package estimate

import (
	"errors"
	"strconv"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/products"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
)

// Unions tells the decoder the kinds of shapes, figures, products and steps.
func Unions() wire.Unions {
	unions := wire.Unions{}
	wire.Add[surfaces.Shape](unions, wire.Union{Key: "kind", Kinds: shapeKinds(), New: func(kind string) (any, bool) {
		s, ok := surfaces.New(kind)
		return s, ok
	}})
	wire.Add[marking.Figure](unions, wire.Union{Key: "kind", Kinds: figureKinds(), New: func(kind string) (any, bool) {
		f, ok := marking.New(kind)
		return f, ok
	}})
	wire.Add[products.Product](unions, wire.Union{Key: "kind", Kinds: products.Kinds(), New: func(kind string) (any, bool) {
		p, ok := products.New(kind)
		return p, ok
	}})
	wire.Add[Step](unions, wire.Union{Key: "operation", Kinds: Operations(), New: newStep})
	return unions
}

func shapeKinds() []string {
	var names []string
	for _, k := range surfaces.Kinds() {
		names = append(names, k.Name)
	}
	return names
}

func figureKinds() []string {
	var names []string
	for _, k := range marking.Kinds() {
		names = append(names, k.Name)
	}
	return names
}

// Reader reads job documents. It is made once and used by many at a time.
type Reader struct {
	unions wire.Unions
	meshes Meshes
}

// NewReader returns a reader of jobs. meshes finds the meshes that jobs name;
// it may be nil, and then none is found.
func NewReader(meshes Meshes) *Reader { return &Reader{unions: Unions(), meshes: meshes} }

// Job reads a job document. The error is a *wire.SyntaxError where the text is
// not JSON. Faults of the document are in the list; what could be read is in
// the job all the same, so that Check can add its own.
func (r *Reader) Job(data []byte, faults *fault.List) (*Job, error) {
	node, err := wire.Parse(data, faults)
	if err != nil {
		return nil, err
	}
	return r.JobOf(node, faults), nil
}

// JobOf reads a job that is part of another document. Pointers of faults are
// those inside the job.
func (r *Reader) JobOf(node *wire.Node, faults *fault.List) *Job {
	job := &Job{}
	d := wire.Decoder{Unions: r.unions, Faults: faults}
	d.Decode(node, job)
	job.Ranges = d.Ranges
	for i := range job.Components {
		r.resolve(job.Components[i].Shape, faults.At("/components/"+strconv.Itoa(i)+"/shape"))
	}
	return job
}

// RunJob works out a job that JobOf read. Its faults, and those of reading it,
// are added to whole with a prefix to their pointers; nil stands for a job that
// has some.
func RunJob(job *Job, read *fault.List, catalogue *products.Catalogue, whole *fault.List, prefix string) *Estimate {
	if r := runPart(job, read, catalogue, whole, prefix); r != nil {
		return r.estimate
	}
	return nil
}

// TraceJob is RunJob with the graph of the estimate.
func TraceJob(job *Job, read *fault.List, catalogue *products.Catalogue, whole *fault.List, prefix string) (*Graph, error) {
	if r := runPart(job, read, catalogue, whole, prefix); r != nil {
		return r.trace(catalogue)
	}
	return nil, nil
}

func runPart(job *Job, read *fault.List, catalogue *products.Catalogue, whole *fault.List, prefix string) *run {
	var r *run
	err := read.Err()
	if !read.Has("") {
		r, err = runThrough(job, catalogue, read)
	}
	var faulty *fault.Error
	if errors.As(err, &faulty) {
		for _, f := range faulty.Faults {
			whole.Add(prefix+f.Pointer, f.Code, f.Detail)
		}
		return nil
	}
	return r
}

// Estimate reads a job document and works it out. The error is a
// *wire.SyntaxError or a *fault.Error with every fault of the document and of
// the job.
func (r *Reader) Estimate(data []byte, catalogue *products.Catalogue) (*Estimate, error) {
	run, err := r.run(data, catalogue)
	if err != nil {
		return nil, err
	}
	return run.estimate, nil
}

// Work reads a job document and works it out; the graph of its figures is there
// for who asks. The errors are those of Estimate.
func (r *Reader) Work(data []byte, catalogue *products.Catalogue) (*Worked, error) {
	run, err := r.run(data, catalogue)
	if err != nil {
		return nil, err
	}
	return &Worked{run: run, catalogue: catalogue}, nil
}

// Worked is a job worked out.
type Worked struct {
	run       *run
	catalogue *products.Catalogue
	graph     *Graph // once it was asked for
}

// Estimate is the answer.
func (w *Worked) Estimate() *Estimate { return w.run.estimate }

// Ranged reports whether the job gives any number as a range.
func (w *Worked) Ranged() bool { return len(w.run.job.Ranges) > 0 }

// Graph is the answer with the graph of its figures.
func (w *Worked) Graph() (*Graph, error) {
	if w.graph == nil {
		var err error
		if w.graph, err = w.run.trace(w.catalogue); err != nil {
			return nil, err
		}
	}
	return w.graph, nil
}

// Trace reads a job document and works it out with the graph of its figures.
// The errors are those of Estimate.
func (r *Reader) Trace(data []byte, catalogue *products.Catalogue) (*Graph, error) {
	run, err := r.run(data, catalogue)
	if err != nil {
		return nil, err
	}
	return run.trace(catalogue)
}

func (r *Reader) run(data []byte, catalogue *products.Catalogue) (*run, error) {
	faults := &fault.List{}
	job, err := r.Job(data, faults)
	if err != nil {
		return nil, err
	}
	if faults.Has("") {
		return nil, faults.Err() // no object at all: what it lacks need not be told
	}
	return runThrough(job, catalogue, faults)
}

// Decode reads the input of a calculator, whose union members are those of a
// job.
func (r *Reader) Decode(node *wire.Node, into any, faults *fault.List) {
	d := wire.Decoder{Unions: r.unions, Faults: faults}
	d.Decode(node, into)
	if shaped, ok := into.(interface{ Form() surfaces.Shape }); ok {
		r.resolve(shaped.Form(), faults.At(""))
	}
}

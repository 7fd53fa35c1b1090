package takeoff

import (
	"fmt"
	"strings"

	"filmbuild/estimate/fault"
)

// gathered are the faults of a take-off, and where everything stands in it.
type gathered struct {
	faults []fault.Fault
	beyond int
	cells  map[string]fault.Cell // by JSON pointer into the job
	bad    map[string]bool       // pointers of cells that were refused
}

func newGathered() *gathered {
	return &gathered{cells: map[string]fault.Cell{}, bad: map[string]bool{}}
}

func (g *gathered) add(at fault.Cell, pointer, code, detail string) {
	if pointer != "" {
		g.bad[pointer] = true
	}
	if len(g.faults) == fault.Most {
		g.beyond++
		return
	}
	g.faults = append(g.faults, fault.Fault{Pointer: pointer, Code: code, Detail: detail, Cell: &at})
}

// engine adds a fault that was found in the job document, at the cell that it
// came from; what follows from a cell refused before is left out.
func (g *gathered) engine(f fault.Fault) {
	for pointer := range g.bad {
		if pointer == f.Pointer || strings.HasPrefix(pointer, f.Pointer+"/") || strings.HasPrefix(f.Pointer, pointer+"/") {
			return
		}
	}
	for pointer := f.Pointer; pointer != ""; pointer = pointer[:strings.LastIndexByte(pointer, '/')] {
		if at, known := g.cells[pointer]; known {
			f.Cell = &at
			break
		}
	}
	if len(g.faults) == fault.Most {
		g.beyond++
		return
	}
	g.faults = append(g.faults, f)
}

func (g *gathered) err() error {
	if len(g.faults) == 0 {
		return nil
	}
	if g.beyond > 0 {
		g.faults = append(g.faults, fault.Fault{Code: "too_many", Detail: fmt.Sprintf("%d further faults are not listed; mend these first", g.beyond)})
	}
	return &fault.Error{Faults: g.faults}
}

// Package example holds the built-in jobs. All but the airliner are invented;
// that one has the published dimensions of a real aircraft.
package example

import (
	"embed"
	"fmt"
)

//go:embed data/*.json
var files embed.FS

// Example is one built-in job.
type Example struct {
	ID  string
	Doc string
	Job []byte // the job document
}

// Default is the id of the example that is worked out where no job is given.
const Default = "jet-trainer"

func list() []Example {
	return []Example{
		{ID: "jet-trainer", Doc: "A volunteer crew takes a jet trainer's fuselage and wing pair to bare metal and repaints them, with markings. Invented."},
		{ID: "one-panel", Doc: "Primer for one removed panel. Invented; change its two sizes to yours."},
		{ID: "lock-gate", Doc: "A steel lock gate, blasted by a contractor and painted by volunteers, with prices of its own. Invented."},
		{ID: "grant-tailplane", Doc: "A tailplane repainted under a grant: suppliers and dates, gifts, sessions of volunteers, and the rows of the funder's form. Invented."},
		{ID: "airliner", Doc: "A single-aisle airliner by its published dimensions, to compare areas and film mass with published ones."},
	}
}

// All lists the examples in a fixed order.
func All() ([]Example, error) {
	found := list()
	for i := range found {
		data, err := files.ReadFile("data/" + found[i].ID + ".json")
		if err != nil {
			return nil, err
		}
		found[i].Job = data
	}
	return found, nil
}

// Find returns the example of an id.
func Find(id string) (Example, error) {
	all, err := All()
	if err != nil {
		return Example{}, err
	}
	for _, e := range all {
		if e.ID == id {
			return e, nil
		}
	}
	return Example{}, fmt.Errorf("there is no example %q", id)
}

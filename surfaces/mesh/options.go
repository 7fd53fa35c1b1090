package mesh

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

// The ways of splitting a mesh by direction.
const (
	SplitNone      = "none"
	SplitUpDown    = "up_down"
	SplitLeftRight = "left_right"
)

// CheckLimit is the number of facets up to which the checks that need the
// whole mesh in memory are made, about 180 bytes a facet: duplicates, edges,
// winding, components, and what has material on both sides. Tests measure it.
const CheckLimit = 2_000_000

// Options say how a mesh is to be measured. Only Unit is required.
type Options struct {
	Format string // stl, obj or ply; empty for whatever the contents look like
	Size   int64  // of the file in bytes; 0 where it is not known

	Unit     string   `json:"unit" doc:"unit the file is drawn in: m, mm, cm, in or ft"`
	Split    string   `json:"split" doc:"none, up_down or left_right, by the direction a facet faces"`
	Axis     Point    `json:"axis" doc:"direction, in the file, that points up (up_down) or left (left_right)"`
	AngleDeg float64  `json:"angle_deg" limit:"(0,90]" doc:"a facet faces up when its normal lies within this angle of the axis, down within it of the other way"`
	Solids   []string `json:"solids" doc:"names of the solids or groups to measure; empty for all"`

	CheckFacets   int     `json:"check_facets" limit:"[0,2000000]" doc:"checks that need memory are left out above this many facets"`
	Samples       int     `json:"samples" limit:"[0,10000]" doc:"points at which material on both sides is looked for; 0 for none"`
	Seed          uint64  `json:"seed" doc:"of the sample; the same seed gives the same points"`
	FacetsPerTurn float64 `json:"facets_per_turn" limit:"[3,100000]" doc:"facets round a full turn of a curved part, where known"`
}

// DefaultOptions returns options with every check switched on and a split by
// the half spaces of the z axis prepared but not chosen.
func DefaultOptions(unit string) Options {
	return Options{Unit: unit, Split: SplitNone, Axis: Point{0, 0, 1}, AngleDeg: 90, CheckFacets: CheckLimit, Samples: 1000, Seed: 1}
}

// Check reports every option that cannot be used, with a JSON pointer below
// the options, a stable code and a sentence.
func (o Options) Check(report func(pointer, code, detail string)) {
	if _, err := Metres(o.Unit); err != nil {
		code := "wrong_unit"
		if o.Unit == "" {
			code = "required"
		}
		report("/unit", code, err.Error())
	}
	checked := o
	if o.Split == SplitNone || o.Split == "" {
		checked.AngleDeg = 90
	} else if o.Split != SplitUpDown && o.Split != SplitLeftRight {
		report("/split", "unknown_kind", fmt.Sprintf("%q is not a way to split a mesh; give none, up_down or left_right", o.Split))
	} else if length := o.Axis.dot(o.Axis); !(length > 0) || math.IsInf(length, 0) {
		report("/axis", "out_of_range", fmt.Sprintf("the axis %v has no direction; give one such as [0, 0, 1]", o.Axis))
	}
	if o.FacetsPerTurn == 0 {
		checked.FacetsPerTurn = 3
	}
	quantity.Check(checked, report)
}

// first returns the first fault of Check as an error.
func (o Options) first() error {
	var err error
	o.Check(func(pointer, code, detail string) {
		if err == nil {
			err = &OptionError{pointer, code, detail}
		}
	})
	return err
}

// OptionError says that a mesh cannot be measured in the way asked for.
type OptionError struct{ Pointer, Code, Detail string }

func (e *OptionError) Error() string { return e.Detail }

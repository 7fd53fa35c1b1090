package masking

import (
	"math"

	"filmbuild/surfaces/quantity"
)

var (
	edgeLimits  = quantity.Limits{High: 100000, LowOpen: true} // m
	widthLimits = quantity.Limits{Low: 1, High: 300}           // mm
	passLimits  = quantity.Limits{Low: 1, High: 20}
	wasteLimits = quantity.Limits{High: 1}
	rollLimits  = quantity.Limits{Low: 0.5, High: 5000} // m
	tapeLimits  = quantity.Limits{High: 1e7}            // m
	bandLimits  = quantity.Limits{High: 20}             // m
	coverLimits = quantity.Limits{High: 100000}         // m²

	lengthLimits   = quantity.Limits{High: 100000}           // m
	overlapLimits  = quantity.Limits{High: 1}                // m
	filmRollLimits = quantity.Limits{Low: 0.05, High: 20}    // m
	fineLimits     = quantity.Limits{Low: 0.5, High: 50}     // mm
	anyWidthLimits = quantity.Limits{Low: 0.5, High: 300}    // mm
	radiusLimits   = quantity.Limits{Low: 0.005, High: 1000} // m
	rateLimits     = quantity.Limits{Low: 0.01, High: 1000}  // m/h
)

// countSlack forgives the rounding of a quotient that is a whole number.
const countSlack = 1e-9

// Tape returns the tape, in m, that an edge takes.
//
//	tape = edge · passes · (1 + waste)
//
// edge is in m in (0, 100000], passes in [1, 20], waste a fraction in [0, 1].
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: allowance on length, common practice; worked in tests/published.
func Tape(edge float64, passes int, waste float64) (float64, error) {
	if err := quantity.Within("edge", edge, "m", edgeLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("passes", float64(passes), "", passLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("waste", waste, "", wasteLimits); err != nil {
		return 0, err
	}
	return edge * float64(passes) * (1 + waste), nil
}

// Rolls returns the whole rolls that hold tape.
//
//	rolls = ⌈tape/roll⌉
//
// tape is in m in [0, 10⁷], roll in m in [0.5, 5000]. Outside those ranges it
// returns a *quantity.RangeError.
//
// Source: identity; worked in tests/published.
func Rolls(tape, roll float64) (int, error) {
	if err := quantity.Within("tape", tape, "m", tapeLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("roll", roll, "m", rollLimits); err != nil {
		return 0, err
	}
	if tape == 0 {
		return 0, nil
	}
	return int(math.Max(1, math.Ceil(tape/roll-countSlack))), nil
}

const (
	sourceTape = "allowance on length, common practice"
	identity   = "identity"
)

// Calculate works out a masking. It expects input that Check finds sound and
// returns a *quantity.RangeError otherwise.
func (m Masking) Calculate() (Result, error) {
	var r Result
	var err error
	if r.TapeM, err = Tape(m.EdgeM, m.Passes, m.WastePercent/100); err != nil {
		return Result{}, err
	}
	if err := quantity.Within("tape width", m.TapeWidthMm, "mm", widthLimits); err != nil {
		return Result{}, err
	}
	r.TapeAreaM2 = m.EdgeM * float64(m.Passes) * m.TapeWidthMm / 1000
	r.Working = append(make([]quantity.Working, 0, 3), quantity.Working{Quantity: "tape_m", Value: r.TapeM, Unit: "m", Formula: "E·n·(1 + w)",
		Terms: map[string]float64{"E": m.EdgeM, "n": float64(m.Passes), "w": m.WastePercent / 100}, Source: sourceTape})
	if m.RollM != nil {
		rolls, err := Rolls(r.TapeM, *m.RollM)
		if err != nil {
			return Result{}, err
		}
		r.Rolls, r.LeftOverM = &rolls, new(math.Max(0, float64(rolls)**m.RollM-r.TapeM))
		r.Working = append(r.Working, rollsOf("rolls", rolls, r.TapeM, *m.RollM))
	}
	for _, part := range []func(*Result) error{m.fine, m.film, m.stretch, m.hours} {
		if err := part(&r); err != nil {
			return Result{}, err
		}
	}
	return r, nil
}

// rollsOf is the working of whole rolls.
func rollsOf(name string, rolls int, tape, roll float64) quantity.Working {
	return quantity.Working{Quantity: name, Value: float64(rolls), Formula: "max(1, ⌈T/R − slack⌉)",
		Terms: map[string]float64{"T": tape, "R": roll, "slack": countSlack}, Source: identity}
}

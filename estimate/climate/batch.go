package climate

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

// PotLife is a mixed two-pack paint at the temperature of the work.
type PotLife struct {
	PotLifeH     float64  `json:"pot_life_h" limit:"[0.05,200]" doc:"pot life of the data sheet"`
	AtC          float64  `json:"at_c" limit:"[-10,60]" doc:"temperature that pot life is given for; 21 unless given"`
	TemperatureC *float64 `json:"temperature_c" limit:"[-10,60]" doc:"temperature of the mixed paint at the work"`
	PotLife2H    *float64 `json:"pot_life_2_h,omitempty" limit:"[0.05,200]" doc:"a second pot life of the data sheet"`
	At2C         *float64 `json:"at_2_c,omitempty" limit:"[-10,60]" doc:"temperature the second pot life is given for"`
	SprayRateLH  *float64 `json:"spray_rate_l_h,omitempty" limit:"[0.01,1000]" doc:"paint used in an hour"`
	VolumeL      *float64 `json:"volume_l,omitempty" limit:"[0.001,100000]" doc:"all the paint of the job; needs spray_rate_l_h"`
}

// NewPotLife returns a pot life with the data sheet's usual temperature set.
func NewPotLife() *PotLife {
	return &PotLife{AtC: 21} // 70 °F. Source: UFGS 09971 3.7.1.3 (reference planning C01)
}

const (
	// LongestBatchH is how long a mixed batch may stand, in h, before it is used
	// up. Source: USAF TO 1-1-8 6.12.6.3 (read).
	LongestBatchH = 4.0
	// LargestBatchL is the most to mix at a time, in L, three US gallons: a large
	// batch heats itself. Source: MIL-HDBK-1110 7.3.1.1, "only a few gallons at a
	// time" (read; the number is common practice).
	LargestBatchL = 11.356
)

const (
	leastRuled = 5.0  // °C, below which the rules extrapolate (common practice)
	mostRuled  = 40.0 // °C (common practice)
	countSlack = 1e-9 // forgives the rounding of a quotient that is a whole number
)

// Check reports every fault of the input: fields outside their limits, and
// second points and volumes that do not go with the rest.
func (p *PotLife) Check(report func(pointer, code, detail string)) {
	sound := true
	quantity.Check(p, func(pointer, code, detail string) {
		sound = false
		report(pointer, code, detail)
	})
	if p.TemperatureC == nil {
		report("/temperature_c", "required", "temperature_c is missing; measure the temperature of the mixed paint")
	}
	if p.VolumeL != nil && p.SprayRateLH == nil {
		report("/spray_rate_l_h", "required", "spray_rate_l_h is missing; how many batches volume_l takes depends on it")
	}
	switch {
	case p.PotLife2H != nil && p.At2C == nil:
		report("/at_2_c", "required", "at_2_c is missing; pot_life_2_h is given for some temperature")
	case p.PotLife2H == nil && p.At2C != nil:
		report("/pot_life_2_h", "required", "pot_life_2_h is missing; at_2_c alone says nothing")
	case p.PotLife2H != nil && sound:
		if said := twoPointFault(p.PotLifeH, p.AtC, *p.PotLife2H, *p.At2C); said != "" {
			report("/pot_life_2_h", "inconsistent", said)
		}
	}
}

// PotLifeResult is how long a paint can be used, and how much to mix at a time.
type PotLifeResult struct {
	PotLifeH   float64  `json:"pot_life_h"`
	HalvedH    float64  `json:"halved_h"`           // by the rule of 10 °C
	FittedH    *float64 `json:"fitted_h,omitempty"` // by the two points of the data sheet
	BatchH     float64  `json:"batch_h"`            // time in which a batch is to be used up
	BatchL     *float64 `json:"batch_l,omitempty"`  // most to mix at a time
	Batches    *int     `json:"batches,omitempty"`
	EvenBatchL *float64 `json:"even_batch_l,omitempty"` // the volume in batches of one size

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}

const (
	sourceHalved = "UFGS 09971 3.7.1.3: ±10 °C halves or doubles"
	sourceFitted = "exponential through both points of the data sheet"
	sourceBatch  = "TO 1-1-8 6.12.6.3: mix no more than is used in 4 hours"
)

// Calculate works out a pot life. It expects input that Check finds sound and
// returns an error otherwise. Of two rules it takes the shorter life.
func (p PotLife) Calculate() (PotLifeResult, error) {
	if p.TemperatureC == nil || (p.PotLife2H == nil) != (p.At2C == nil) {
		return PotLifeResult{}, fmt.Errorf("temperature_c, or one half of the second point, is missing")
	}
	var r PotLifeResult
	var err error
	if r.HalvedH, err = HalvedPotLife(p.PotLifeH, p.AtC, *p.TemperatureC); err != nil {
		return PotLifeResult{}, err
	}
	life := quantity.Working{Quantity: "pot_life_h", Value: r.HalvedH, Unit: "h", Formula: "P·2^((t1 − t)/10)",
		Terms: map[string]float64{"P": p.PotLifeH, "t1": p.AtC, "t": *p.TemperatureC}, Source: sourceHalved}
	if p.PotLife2H != nil {
		fitted, err := FittedPotLife(p.PotLifeH, p.AtC, *p.PotLife2H, *p.At2C, *p.TemperatureC)
		if err != nil {
			return PotLifeResult{}, err
		}
		r.FittedH = &fitted
		if fitted < r.HalvedH {
			life = quantity.Working{Quantity: "pot_life_h", Value: fitted, Unit: "h", Formula: "P1·(P2/P1)^((t − t1)/(t2 − t1))",
				Terms: map[string]float64{"P1": p.PotLifeH, "P2": *p.PotLife2H, "t1": p.AtC, "t2": *p.At2C, "t": *p.TemperatureC}, Source: sourceFitted}
			r.Warnings = append(r.Warnings, "the two points of the data sheet give a shorter life than the rule of 10 °C; the shorter one is taken")
		} else {
			r.Warnings = append(r.Warnings, "the rule of 10 °C gives no longer a life than the two points of the data sheet; it is taken")
		}
	}
	r.PotLifeH = life.Value
	r.BatchH = min(r.PotLifeH, LongestBatchH)
	r.Working = append(make([]quantity.Working, 0, 4), life, quantity.Working{Quantity: "batch_h", Value: r.BatchH, Unit: "h", Formula: "min(P, 4)",
		Terms: map[string]float64{"P": r.PotLifeH}, Source: sourceBatch})
	if err := p.batches(&r); err != nil {
		return PotLifeResult{}, err
	}
	if *p.TemperatureC < leastRuled || *p.TemperatureC > mostRuled {
		r.Warnings = append(r.Warnings, "outside 5 to 40 °C the pot life is extrapolated; try a small batch first")
	}
	return r, nil
}

func (p PotLife) batches(r *PotLifeResult) error {
	if p.SprayRateLH == nil {
		return nil
	}
	if err := quantity.Within("spray rate", *p.SprayRateLH, "L/h", quantity.Limits{Low: 0.01, High: 1000}); err != nil {
		return err
	}
	batch := *p.SprayRateLH * r.BatchH
	r.BatchL = &batch
	r.Working = append(r.Working, quantity.Working{Quantity: "batch_l", Value: batch, Unit: "L", Formula: "R·h",
		Terms: map[string]float64{"R": *p.SprayRateLH, "h": r.BatchH}, Source: identity})
	if batch > LargestBatchL {
		r.Warnings = append(r.Warnings, "a batch above 20 L heats itself and its pot life is shorter than a data sheet says; mix a few litres at a time")
	}
	if p.VolumeL == nil {
		return nil
	}
	if err := quantity.Within("volume", *p.VolumeL, "L", quantity.Limits{Low: 0.001, High: 100000}); err != nil {
		return err
	}
	count := math.Max(1, math.Ceil(*p.VolumeL/batch-countSlack))
	r.Batches, r.EvenBatchL = new(int(count)), new(*p.VolumeL/count)
	r.Working = append(r.Working, quantity.Working{Quantity: "batches", Value: count, Formula: "⌈V/B⌉",
		Terms: map[string]float64{"V": *p.VolumeL, "B": batch}, Source: identity})
	return nil
}

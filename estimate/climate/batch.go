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

	InductionH *float64 `json:"induction_h,omitempty" limit:"[0,24]" doc:"time the mixed paint stands before use, at at_c; colder paint stands longer"`
	BatchLossL float64  `json:"batch_loss_l,omitempty" limit:"[0,1000]" doc:"paint left in gun, hose and cup at the end of each batch; 0 unless given"`
	CupL       *float64 `json:"cup_l,omitempty" limit:"[0.05,1000]" doc:"what cup or pot of the gun holds"`
	CleaningL  *float64 `json:"cleaning_l,omitempty" limit:"[0,1000]" doc:"solvent to clean up after one batch"`
}

// NewPotLife returns a pot life with the data sheet's usual temperature set.
func NewPotLife() *PotLife {
	return &PotLife{AtC: 21} // 70 °F. Source: UFGS 09971 3.7.1.3 (reference planning C01)
}

const (
	// LongestBatchH is how long a mixed batch may stand, in h, before it is used
	// up. Source: USAF TO 1-1-8 6.12.6.3 (read).
	LongestBatchH = 4.0

	// ShortestBatchH is the least time, in h, in which one person mixes a batch
	// by hand, fills a gun, sprays it and flushes the gun (assumption).
	ShortestBatchH = 0.25
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
	HalvedH    float64  `json:"halved_h"`              // by the rule of 10 °C
	FittedH    *float64 `json:"fitted_h,omitempty"`    // by the two points of the data sheet
	BatchH     float64  `json:"batch_h"`               // time in which a batch is to be used up
	InductionH *float64 `json:"induction_h,omitempty"` // to stand before use, at the temperature of the work
	UseH       float64  `json:"use_h"`                 // time to use a batch in, once it has stood
	BatchL     *float64 `json:"batch_l,omitempty"`     // most to mix at a time
	Batches    *int     `json:"batches,omitempty"`
	EvenBatchL *float64 `json:"even_batch_l,omitempty"` // the volume in batches of one size

	CupFillings *int     `json:"cup_fillings,omitempty"`  // of one batch
	LeftInGunL  *float64 `json:"left_in_gun_l,omitempty"` // of all batches; to be mixed on top of volume_l
	CleaningL   *float64 `json:"cleaning_l,omitempty"`    // of all batches

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}

const (
	sourceHalved    = "UFGS 09971 3.7.1.3: ±10 °C halves or doubles"
	sourceFitted    = "exponential through both points of the data sheet"
	sourceInduction = "NAVFAC MO-124: induction of Navy epoxy by temperature (the factor is derived)"
	sourceBatch     = "TO 1-1-8 6.12.6.3: mix no more than is used in 4 hours"
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
		life.Value, life.Formula, life.Source = min(r.HalvedH, fitted), "min(P·2^((t1 − t)/10), P·(P2/P)^((t − t1)/(t2 − t1)))", sourceHalved+"; "+sourceFitted
		life.Terms["P2"], life.Terms["t2"] = *p.PotLife2H, *p.At2C
		if fitted < r.HalvedH {
			r.Warnings = append(r.Warnings, "the two points of the data sheet give a shorter life than the rule of 10 °C; the shorter one is taken")
		} else {
			r.Warnings = append(r.Warnings, "the rule of 10 °C gives no longer a life than the two points of the data sheet; it is taken")
		}
	}
	r.PotLifeH = life.Value
	r.BatchH = min(r.PotLifeH, LongestBatchH)
	r.Working = append(make([]quantity.Working, 0, 8), life, quantity.Working{Quantity: "batch_h", Value: r.BatchH, Unit: "h", Formula: "min(P, 4)",
		Terms: map[string]float64{"P": r.PotLifeH}, Source: sourceBatch})
	if err := p.stand(&r); err != nil {
		return PotLifeResult{}, err
	}
	if err := p.batches(&r); err != nil {
		return PotLifeResult{}, err
	}
	if *p.TemperatureC < leastRuled || *p.TemperatureC > mostRuled {
		r.Warnings = append(r.Warnings, "outside 5 to 40 °C the pot life is extrapolated; try a small batch first")
	}
	if r.PotLifeH < ShortestBatchH {
		r.Warnings = append(r.Warnings, fmt.Sprintf("a pot life of %.2g min is too little to mix, fill and spray a batch by hand and to clean the gun; cool the paint, take a slower hardener, or a gun that mixes at its head", r.PotLifeH*60))
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
	batch := *p.SprayRateLH*r.UseH + p.BatchLossL
	r.BatchL = &batch
	r.Working = append(r.Working, quantity.Working{Quantity: "batch_l", Value: batch, Unit: "L", Formula: "R·h + g",
		Terms: map[string]float64{"R": *p.SprayRateLH, "h": r.UseH, "g": p.BatchLossL}, Source: identity})
	if batch > LargestBatchL {
		r.Warnings = append(r.Warnings, fmt.Sprintf("a batch above about %.0f L heats itself and its pot life is shorter than a data sheet says; mix a few litres at a time", LargestBatchL))
	}
	if p.VolumeL == nil {
		return p.fillings(r, batch)
	}
	if err := quantity.Within("volume", *p.VolumeL, "L", quantity.Limits{Low: 0.001, High: 100000}); err != nil {
		return err
	}
	usable := batch - p.BatchLossL
	count := math.Max(1, math.Ceil(*p.VolumeL/usable-countSlack))
	r.Batches, r.EvenBatchL = new(int(count)), new(*p.VolumeL/count+p.BatchLossL)
	r.Working = append(r.Working, quantity.Working{Quantity: "batches", Value: count, Formula: "⌈V/(B − g)⌉",
		Terms: map[string]float64{"V": *p.VolumeL, "B": batch, "g": p.BatchLossL}, Source: identity})
	if p.BatchLossL > 0 {
		r.LeftInGunL = new(count * p.BatchLossL)
		r.Working = append(r.Working, quantity.Working{Quantity: "left_in_gun_l", Value: *r.LeftInGunL, Unit: "L", Formula: "n·g",
			Terms: map[string]float64{"n": count, "g": p.BatchLossL}, Source: identity})
	}
	if p.CleaningL != nil {
		r.CleaningL = new(count * *p.CleaningL)
		r.Working = append(r.Working, quantity.Working{Quantity: "cleaning_l", Value: *r.CleaningL, Unit: "L", Formula: "n·c",
			Terms: map[string]float64{"n": count, "c": *p.CleaningL}, Source: identity})
	}
	return p.fillings(r, *r.EvenBatchL)
}

// fillings counts how often the cup is filled from one batch.
func (p PotLife) fillings(r *PotLifeResult, batch float64) error {
	if p.CupL == nil {
		return nil
	}
	if err := quantity.Within("cup", *p.CupL, "L", quantity.Limits{Low: 0.05, High: 1000}); err != nil {
		return err
	}
	count := math.Max(1, math.Ceil(batch / *p.CupL - countSlack))
	r.CupFillings = new(int(count))
	r.Working = append(r.Working, quantity.Working{Quantity: "cup_fillings", Value: count, Formula: "⌈B/cup⌉",
		Terms: map[string]float64{"B": batch, "cup": *p.CupL}, Source: identity})
	return nil
}

// remedy is what gives a paint more time between standing and the end of its
// life: standing takes longer in the cold, and life is shorter in the warmth.
func (p PotLife) remedy() string {
	if *p.TemperatureC > p.AtC {
		return "cool the paint, or take a slower hardener"
	}
	return "warm the paint"
}

// stand takes the induction time off the time in which a batch is used.
func (p PotLife) stand(r *PotLifeResult) error {
	r.UseH = r.BatchH
	if p.InductionH == nil {
		return nil
	}
	stand, err := Induction(*p.InductionH, p.AtC, *p.TemperatureC)
	if err != nil {
		return err
	}
	r.InductionH = &stand
	r.UseH = r.BatchH - stand
	if r.UseH <= 0 {
		return fmt.Errorf("the paint stands for %.3g h before use and has to be used up within %.3g h of mixing: nothing of a batch can be used; %s, or look at pot_life_h and induction_h", stand, r.BatchH, p.remedy())
	}
	r.Working = append(r.Working,
		quantity.Working{Quantity: "induction_h", Value: stand, Unit: "h", Formula: "I·max(1, (1/0.43)^((t1 − t)/10))",
			Terms: map[string]float64{"I": *p.InductionH, "t1": p.AtC, "t": *p.TemperatureC}, Source: sourceInduction},
		quantity.Working{Quantity: "use_h", Value: r.UseH, Unit: "h", Formula: "batch − stand",
			Terms: map[string]float64{"batch": r.BatchH, "stand": stand}, Source: "pot life counts from mixing (common practice)"})
	return nil
}

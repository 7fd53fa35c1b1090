package blast

import "math"

// media finds the time, what is thrown and what of it is used up. Thrown once,
// topped up, or thrown as a batch until it is spent: these are three models,
// and only one of them is used.
func (b Blasting) media(r *Result) error {
	if loss, known := b.loss(); known {
		r.Uses = new(1 / loss)
		if b.BatchPasses != nil {
			_, thrown, err := UntoppedCharge(loss, *b.BatchPasses)
			if err != nil {
				return err
			}
			r.Uses = &thrown
		}
	}
	if b.StripRateM2H == nil {
		return nil
	}
	b.rates(r)
	if b.AreaM2 != nil {
		r.Hours = new(*b.AreaM2 / (*r.StripRateUsedM2H * float64(b.Nozzles)))
		r.ShiftHours = new(*r.Hours / b.available())
	}
	if r.MediaFlowPerNozzleKgH == nil {
		return nil
	}
	r.MediaThrownKgM2 = new(*r.MediaFlowPerNozzleKgH / *r.StripRateUsedM2H)
	if b.AreaM2 != nil {
		r.MediaThrownKg = new(*b.AreaM2 * *r.MediaThrownKgM2)
		b.used(r)
	}
	return nil
}

func (b Blasting) rates(r *Result) {
	r.StripRateUsedM2H, r.StripRateFrom = new(b.nozzleOnRate()), "given"
	r.StripRateBurdenedM2H = new(*r.StripRateUsedM2H * float64(b.Nozzles) * b.available())
	if b.book != nil {
		r.StripRateLowM2H, r.StripRateHighM2H, r.StripRateFrom = &b.book.LowM2H, &b.book.HighM2H, b.book.Source
	}
}

// used finds what of the thrown media is gone, and what has to be bought.
func (b Blasting) used(r *Result) {
	thrown := *r.MediaThrownKg
	loss, known := b.loss()
	switch {
	case !b.Recovered:
		r.MediaUsedKg = new(thrown)
	case !known:
		return
	case b.BatchPasses != nil:
		r.MediaUsedKg = new(thrown / *r.Uses)
		if b.BatchKg != nil {
			r.Batches = new(math.Ceil(*r.MediaUsedKg / *b.BatchKg - wholeBatches))
			r.MediaBoughtKg = new(max(*r.Batches**b.BatchKg, *r.MediaUsedKg))
			return
		}
	default:
		r.MediaUsedKg = new(thrown * min(loss, 1)) // a share of at most 1 first, so that rounding adds no media
	}
	r.MediaBoughtKg = new(*r.MediaUsedKg + b.WorkingChargeKg)
}

// wholeBatches keeps three batches three in spite of rounding.
const wholeBatches = 1e-9

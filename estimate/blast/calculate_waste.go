package blast

import "fmt"

func (b Blasting) waste(r *Result) error {
	if b.AreaM2 != nil && b.RemovedFilmUm > 0 && b.RemovedFilmDensityKgL != nil {
		r.RemovedFilmKg = new(*b.AreaM2 * b.RemovedFilmUm * *b.RemovedFilmDensityKgL / 1000)
	}
	if r.MediaUsedKg == nil {
		return nil
	}
	waste := *r.MediaUsedKg + b.discarded()
	if r.RemovedFilmKg != nil {
		waste += *r.RemovedFilmKg
		b.concentration(r, waste)
	}
	r.WasteKg = &waste
	if b.CollectedDebrisKg != nil {
		r.RecoveryPercent = new(100 * *b.CollectedDebrisKg / waste)
	}
	return nil
}

// discarded is what of the working charge is waste in the end, in kg.
func (b Blasting) discarded() float64 {
	if b.ChargeDiscarded {
		return b.WorkingChargeKg
	}
	return 0
}

// concentration compares the share of the film in the waste with that of media
// thrown once.
//
//	ratio = (film/waste) / (film/(thrown + film))
//
// Source: E-13; in tests/published.
func (b Blasting) concentration(r *Result, waste float64) {
	film := *r.RemovedFilmKg
	once := *r.MediaThrownKg + film
	r.FilmInWastePercent, r.FilmInWasteOncePercent = new(100*film/waste), new(100*film/once)
	r.ConcentrationRatio = new(once / waste)
}

// drums finds the drums for the waste, which is taken to lie as loose as the
// media.
func (b Blasting) drums(r *Result) error {
	if r.WasteKg == nil || b.BulkDensityKgM3 == nil {
		return nil
	}
	each, err := b.drum().Kilograms(*b.BulkDensityKgM3 / 1000)
	if err != nil {
		return err
	}
	count, err := Drums(*r.WasteKg, each)
	if err != nil {
		return err
	}
	r.DrumKg, r.Drums = &each, &count
	return nil
}

func (b Blasting) drum() Drum {
	return Drum{Litres: b.DrumL, Fill: b.DrumFillPercent / 100, MostKg: b.DrumMostKg}
}

// dust gives the dust where a factor is published for it, and says why not
// elsewhere.
func (b Blasting) dust(r *Result) error {
	switch {
	case r.MediaThrownKg == nil:
		return nil
	case b.DustAs == "":
		r.DustReason = "published dust factors (AP-42 13.2.6) are for sand, grit and shot; for other media there is none, so ask for it to be measured"
	case b.Substrate != "" && b.Substrate != "steel":
		r.DustReason = fmt.Sprintf("published dust factors (AP-42 13.2.6) are for mild steel, and this is %s", b.Substrate)
	case b.WindMS == nil:
		r.DustReason = "dust of open blasting depends on the wind: give wind_m_s; in an enclosure no published factor holds"
	case *b.WindMS < lowWind || *b.WindMS > highWind:
		r.DustReason = fmt.Sprintf("published dust factors (AP-42 13.2.6) are for winds of %.2f to %.2f m/s (5 to 15 mph); %g m/s is outside", lowWind, highWind, *b.WindMS)
	default:
		e, err := Dust(b.DustAs, *r.MediaThrownKg, *b.WindMS, b.DustControlPercent/100)
		if err != nil {
			return err
		}
		r.DustKg, r.DustPM10Kg, r.DustPM25Kg = &e.TotalKg, e.PM10Kg, e.PM25Kg
	}
	return nil
}

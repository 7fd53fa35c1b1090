package masking

import "filmbuild/surfaces/quantity"

// Stretch returns by how much the outer edge of a flat tape has to stretch on a
// circle, as a fraction, where its inner edge is not strained.
//
//	stretch = width / radius
//
// width is in mm in [0.5, 300], radius in m in [0.005, 1000]. Outside those ranges
// it returns a *quantity.RangeError.
//
// Source: geometry (reference markings ID-14: 6 mm on 100 mm is 6 %).
func Stretch(widthMm, radius float64) (float64, error) {
	if err := quantity.Within("tape width", widthMm, "mm", anyWidthLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("radius", radius, "m", radiusLimits); err != nil {
		return 0, err
	}
	return widthMm / 1000 / radius, nil
}

// fine adds a narrow tape at the paint edge, as long as the wide one behind it.
func (m Masking) fine(r *Result) error {
	if m.FineTapeWidthMm == nil {
		return nil
	}
	if err := quantity.Within("fine tape width", *m.FineTapeWidthMm, "mm", fineLimits); err != nil {
		return err
	}
	r.FineTapeM = new(r.TapeM)
	r.TapeAreaM2 += m.EdgeM * float64(m.Passes) * *m.FineTapeWidthMm / 1000
	r.Working = append(r.Working, quantity.Working{Quantity: "fine_tape_m", Value: r.TapeM, Unit: "m", Formula: "E·n·(1 + w)",
		Terms: map[string]float64{"E": m.EdgeM, "n": float64(m.Passes), "w": m.WastePercent / 100}, Source: "TM 1-1500-204-23-9 and FAA-H-8083-31 ch. 8: narrow tape at the paint edge first, wider tape over it; " + sourceTape})
	if m.FineRollM == nil {
		return nil
	}
	rolls, err := Rolls(r.TapeM, *m.FineRollM)
	if err != nil {
		return err
	}
	r.FineRolls = &rolls
	r.Working = append(r.Working, rollsOf("fine_rolls", rolls, r.TapeM, *m.FineRollM))
	return nil
}

func (m Masking) stretch(r *Result) error {
	if m.RadiusM == nil {
		return nil
	}
	for _, tape := range []struct {
		name  string
		width *float64
		into  **float64
	}{{"stretch_percent", &m.TapeWidthMm, &r.StretchPercent}, {"fine_stretch_percent", m.FineTapeWidthMm, &r.FineStretchPercent}} {
		if tape.width == nil {
			continue
		}
		stretch, err := Stretch(*tape.width, *m.RadiusM)
		if err != nil {
			return err
		}
		*tape.into = new(100 * stretch)
		r.Working = append(r.Working, quantity.Working{Quantity: tape.name, Value: 100 * stretch, Unit: "%", Formula: "100·w/(1000·r)",
			Terms: map[string]float64{"w": *tape.width, "r": *m.RadiusM}, Source: "geometry: the inner edge unstrained"})
	}
	return nil
}

// hours are those of one person who lays one length after the other.
func (m Masking) hours(r *Result) error {
	if m.RateMH == nil {
		return nil
	}
	if err := quantity.Within("rate", *m.RateMH, "m/h", rateLimits); err != nil {
		return err
	}
	tapes := 1.0
	if m.FineTapeWidthMm != nil {
		tapes = 2
	}
	r.Hours = new(m.EdgeM * float64(m.Passes) * tapes / *m.RateMH)
	r.Working = append(r.Working, quantity.Working{Quantity: "hours", Value: *r.Hours, Unit: "h", Formula: "E·n·k/rate",
		Terms: map[string]float64{"E": m.EdgeM, "n": float64(m.Passes), "k": tapes, "rate": *m.RateMH}, Source: identity})
	return nil
}

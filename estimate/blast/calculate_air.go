package blast

import "math"

func (b Blasting) discharge() float64 {
	switch {
	case b.DischargeCoefficient != nil:
		return *b.DischargeCoefficient
	case b.Feed == Suction:
		return SuctionDischarge
	}
	return PressureDischarge
}

func (b Blasting) air(r *Result) error {
	nozzles := float64(b.Nozzles)
	ambient, err := b.ambient()
	if err != nil {
		return err
	}
	one, err := FreeAir(b.NozzleBoreMm, b.PressureKPa, ambient, b.discharge())
	if err != nil {
		return err
	}
	worn, err := WornBore(b.NozzleBoreMm)
	if err != nil {
		return err
	}
	r.DischargeUsed, r.AmbientUsedKPa = b.discharge(), ambient
	r.AirM3Min = one * nozzles
	r.WornAirM3Min = r.AirM3Min * (worn / b.NozzleBoreMm) * (worn / b.NozzleBoreMm)
	r.CompressorM3Min = (r.AirM3Min + b.OtherAirM3Min) * CompressorReserve
	r.WornCompressorM3Min = (r.WornAirM3Min + b.OtherAirM3Min) * CompressorReserve
	r.AirPowerKW = compressorKilowatts(r.AirM3Min)
	r.CompressorPowerKW = compressorKilowatts(r.CompressorM3Min)
	r.CompressorPowerHP = r.CompressorPowerKW / kilowattsPerHorsepower
	r.ChokedFromPressure = ambient * (ChokedRatio() - 1)
	r.Choked = b.PressureKPa >= r.ChokedFromPressure
	if b.CompressorSupplyM3Min != nil && r.AirM3Min > 0 {
		left := max(0, *b.CompressorSupplyM3Min/CompressorReserve-b.OtherAirM3Min)
		r.LargestBoreMm = new(b.NozzleBoreMm * math.Sqrt(left/r.AirM3Min))
	}
	return nil
}

func (b Blasting) hose(r *Result) error {
	least, err := HoseBore(b.NozzleBoreMm)
	if err == nil {
		r.HoseBoreLeastMm = &least
	}
	if b.HoseLengthM == nil {
		return nil
	}
	bore := least
	if b.HoseBoreMm != nil {
		bore = *b.HoseBoreMm
	} else if err != nil {
		return err
	}
	one := r.AirM3Min / float64(b.Nozzles)
	loss, err := HoseLoss(bore, *b.HoseLengthM, one, b.PressureKPa)
	if err != nil {
		return err
	}
	r.HoseLossKPa, r.CompressorPressureKPa = &loss, new(b.PressureKPa+loss)
	r.HoseProductionLossPercent = new(min(100*loss*lossOfProduction, 100))
	return nil
}

func (b Blasting) flow(r *Result) error {
	flow := b.MediaFlowKgH
	if flow == nil {
		if b.Feed == Suction || b.BulkDensityKgM3 == nil {
			return nil
		}
		found, err := MediaFlow(b.NozzleBoreMm, b.PressureKPa, r.AmbientUsedKPa, *b.BulkDensityKgM3)
		if err != nil {
			return err
		}
		flow, r.MediaFlowAccuracyPercent = &found, new(float64(MediaFlowAccuracyPercent))
	}
	r.MediaFlowPerNozzleKgH = new(*flow)
	r.MediaFlowKgH = new(*flow * float64(b.Nozzles))
	return nil
}

// hosed is the bore of the hose that the loss was found for.
func (b Blasting) hosed(r Result) float64 {
	if b.HoseBoreMm != nil {
		return *b.HoseBoreMm
	}
	return *r.HoseBoreLeastMm
}

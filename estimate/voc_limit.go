package estimate

import (
	"fmt"

	"filmbuild/estimate/voc"
	"filmbuild/products"
)

// holdVOC finds the VOC of a paint as it is applied, and holds it against the
// limit of the step or the job: thinner that takes it beyond is a fault.
//
// Source: 40 CFR 59.104(a)(1); limits are the job's to state, because which one
// holds depends on the place and the work.
func (r *run) holdVOC(f *FilmPlan, s *StepEstimate, paint *products.Paint, thinnerPercent float64, m *Mixing, at string) {
	limit := r.job.VOCLimitGL
	if f.VOCLimitGL != nil {
		limit = f.VOCLimitGL
	}
	m.VOCLimitGL = limit
	if paint.VOCGL == nil {
		if limit != nil {
			s.warnf("%s has no voc_g_l: it cannot be held against the limit of %g g/L", paint.ID, *limit)
		}
		return
	}
	s.implausibleSolids(paint)
	thinner := r.thinnerOf(paint)
	if thinnerPercent > 0 && (thinner == nil || thinner.VOCGL == nil) {
		if limit != nil {
			s.warnf("the thinner of %s has no voc_g_l: the mix cannot be held against the limit of %g g/L", paint.ID, *limit)
		}
		return
	}
	mix := voc.Mixture{Parts: []voc.Part{{VolumeL: 1, VOCGL: paint.VOCGL, WaterVolumePercent: paint.WaterVolumePercent, ExemptVolumePercent: paint.ExemptVolumePercent}}, LimitGL: limit}
	bare, err := mix.Calculate()
	if err != nil {
		r.faults.Addf(r.ofPaint(paint.ID, at), "inconsistent", "the VOC of %s cannot be found: %s", paint.ID, err)
		return
	}
	if thinner != nil && thinner.VOCGL != nil && limit != nil {
		mix.ThinnerVOCGL, mix.ThinnerWaterVolumePercent, mix.ThinnerExemptVolumePercent = thinner.VOCGL, thinner.WaterVolumePercent, thinner.ExemptVolumePercent
		if room, err := mix.Calculate(); err == nil {
			m.MaxThinnerPercent = room.MaxThinnerPercent
		}
	}
	asApplied := bare
	if thinnerPercent > 0 {
		mix.ThinnerVOCGL, mix.ThinnerWaterVolumePercent, mix.ThinnerExemptVolumePercent = nil, nil, nil
		mix.Parts = append(mix.Parts, voc.Part{VolumeL: thinnerPercent / 100, VOCGL: thinner.VOCGL, WaterVolumePercent: thinner.WaterVolumePercent, ExemptVolumePercent: thinner.ExemptVolumePercent})
		if asApplied, err = mix.Calculate(); err != nil {
			r.faults.Addf(at+"/thinner_percent", "inconsistent", "the VOC of %s as thinned cannot be found: %s", paint.ID, err)
			return
		}
	}
	m.VOCGL = &asApplied.VOCGL
	switch {
	case limit == nil || *asApplied.WithinLimit:
	case !*bare.WithinLimit:
		r.faults.Addf(at+"/voc_limit_g_l", "inconsistent", "%s has %.4g g/L of VOC before it is thinned, above the limit of %g g/L; take another paint, or look at the limit", paint.ID, bare.VOCGL, *limit)
	default:
		r.faults.Addf(at+"/thinner_percent", "inconsistent", "%s with %.3g %% of %s has %.4g g/L of VOC as applied, above the limit of %g g/L; %s", paint.ID, thinnerPercent, paint.Thinner, asApplied.VOCGL, *limit, headroom(m.MaxThinnerPercent))
	}
}

func headroom(most *float64) string {
	if most == nil || *most < 0.05 {
		return "thin by 0 %, or with an exempt thinner"
	}
	return fmt.Sprintf("thin by at most %.3g %%, or with an exempt thinner", *most)
}

// thinnerOf returns the thinner of a paint, nil where it names none that exists.
func (r *run) thinnerOf(paint *products.Paint) *products.Thinner {
	p, _ := r.catalogue.Product(paint.Thinner)
	thinner, _ := p.(*products.Thinner)
	return thinner
}

// mostSolidsApart is how far the solids that a paint's VOC implies may lie from
// those it states before one of the figures looks wrong (common practice).
const mostSolidsApart = 10.0 // percent of the volume

// implausibleSolids warns where volume solids and VOC of a paint do not go
// together.
//
// Source: VS = 1 − VOC/solvent density flags bad data (reference coating V3, Y8);
// water and exempt solvent come off too.
func (s *StepEstimate) implausibleSolids(paint *products.Paint) {
	water := valueOr(paint.WaterVolumePercent, 0) + valueOr(paint.ExemptVolumePercent, 0)
	implied, err := voc.ImpliedSolids(*paint.MaterialVOCGL(), voc.SolventDensity)
	if err != nil {
		s.warnf("%s: a VOC of %.4g g/L is above the %.0f g/L of common solvents: look at voc_g_l", paint.ID, *paint.MaterialVOCGL(), voc.SolventDensity)
		return
	}
	if solids := 100*implied - water; solids-paint.VolumeSolidsPercent > mostSolidsApart || paint.VolumeSolidsPercent-solids > mostSolidsApart {
		s.warnf("%s: a VOC of %.4g g/L goes with about %.0f %% volume solids, and %.4g %% is given: one of the two figures, or the share of water, looks wrong", paint.ID, *paint.VOCGL, solids, paint.VolumeSolidsPercent)
	}
}

package voc

import (
	"fmt"
	"strconv"
	"strings"

	"filmbuild/surfaces/quantity"
)

// Check reports every fault of the input: fields outside their limits, parts
// that are described twice or not at all, and a mixture that is all water.
func (m *Mixture) Check(report func(pointer, code, detail string)) {
	var faulty []string
	quantity.Check(m, func(pointer, code, detail string) {
		faulty = append(faulty, pointer)
		report(pointer, code, detail)
	})
	if len(m.Parts) == 0 {
		report("/parts", "required", "parts is empty; list what is mixed, each with volume_l and voc_g_l")
		return
	}
	if len(m.Parts) > mostParts {
		report("/parts", "too_many", fmt.Sprintf("parts has %d entries; the most is %d", len(m.Parts), mostParts))
		return
	}
	sound := true
	for i, p := range m.Parts {
		at := "/parts/" + strconv.Itoa(i)
		if below(faulty, at+"/") {
			sound = false
			continue
		}
		if pointer, code, detail := p.fault(); code != "" {
			sound = false
			report(at+pointer, code, detail)
		}
	}
	if m.ThinnerVOCGL != nil && m.LimitGL == nil {
		report("/limit_g_l", "required", "limit_g_l is missing; how much thinner may be added depends on it")
	}
	if m.ThinnerVOCGL == nil && (m.ThinnerWaterVolumePercent != nil || m.ThinnerExemptVolumePercent != nil) {
		report("/thinner_voc_g_l", "required", "thinner_voc_g_l is missing; of water and exempt solvent it is 0")
	}
	if sum := or0(m.ThinnerWaterVolumePercent) + or0(m.ThinnerExemptVolumePercent); sum > 100 {
		report("/thinner_water_volume_percent", "inconsistent", fmt.Sprintf("water and exempt solvent are %.4g %% of the thinner; together they must be at most 100 %%", sum))
	}
	if !sound {
		return
	}
	if t := m.total(); t.rest() < leastRest*t.volume {
		report("/parts", "inconsistent", fmt.Sprintf(
			"all but %.2g %% of the mixture is water or exempt compounds, so its VOC less them has no meaning; it must be at least 1 %%", 100*max(t.rest(), 0)/t.volume))
	}
}

func below(pointers []string, prefix string) bool {
	for _, p := range pointers {
		if strings.HasPrefix(p, prefix) {
			return true
		}
	}
	return false
}

// total is the contents of all parts and their volume.
type total struct {
	contents
	volume float64
}

func (t total) rest() float64 { return t.volume - t.water - t.exempt }

func (m *Mixture) total() total {
	var t total
	for _, p := range m.Parts {
		c := p.contents()
		t.voc += c.voc
		t.water += c.water
		t.exempt += c.exempt
		t.volume += p.VolumeL
	}
	return t
}

package caution

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheTableLoadsAndEveryCautionIsWhole(t *testing.T) {
	list, err := read(bytes.NewReader(table))
	require.NoError(t, err)
	require.NotEmpty(t, list)
	for _, c := range list {
		assert.NotEmpty(t, c.when, c.Code)
		assert.NotEmpty(t, c.Text, c.Code)
		assert.Contains(t, []string{"read", "memory", "practice"}, c.Mark, c.Code)
	}
}

func codes(signs Signs) []string {
	var found []string
	for _, c := range For(signs) {
		found = append(found, c.Code)
	}
	return found
}

func TestSignsFindTheirCautions(t *testing.T) {
	for name, c := range map[string]struct {
		signs       Signs
		with, whout []string
	}{
		"polyurethane by spray gun": {Signs{"operation:coat", "hazard:isocyanate", "method:hvlp"}, []string{"isocyanate", "pressure", "weather", "paint_waste", "defer"}, []string{"old_paint", "thin_skin"}},
		"bead on clad skin":         {Signs{"operation:blast", "removal", "substrate:clad_aluminium", "old:lead", "old:cadmium", "recovered"}, []string{"old_paint", "lead_dust", "cadmium_dust", "supplied_air", "metal_dust", "waste_tclp", "waste_california", "waste_recycled", "thin_skin", "separate_media", "blast_breathing", "waste"}, []string{"magnesium", "isocyanate", "chromate_dust", "asbestos", "lead_year"}},
		"sanding magnesium":         {Signs{"operation:sand", "removal", "substrate:magnesium", "old:lead", "old:before_1978"}, []string{"magnesium", "dust", "lead_dust", "lead_year", "metal_dust"}, []string{"thin_skin", "pressure", "waste_recycled", "supplied_air"}},
		"stripping tested paint":    {Signs{"operation:strip", "removal", "openings", "hazard:solvent"}, []string{"stripper", "waste", "confined"}, []string{"old_paint", "lead_strip", "static"}},
		"electrostatic on a gate":   {Signs{"operation:coat", "hazard:solvent", "method:electrostatic", "spray", "large"}, []string{"static", "electrostatic", "height", "turning"}, []string{"supplied_air"}},
		"nothing at all":            {Signs{}, []string{"defer"}, []string{"waste"}},
	} {
		t.Run(name, func(t *testing.T) {
			found := codes(c.signs)
			assert.Subset(t, found, c.with)
			for _, no := range c.whout {
				assert.NotContains(t, found, no)
			}
		})
	}
}

func TestABrokenTableIsRefused(t *testing.T) {
	for name, text := range map[string]string{
		"unknown column": "code,when,wear,text,source,mark,extra\n",
		"empty source":   "code,when,wear,text,source,mark\na,always,-,text,,read\n",
		"code twice":     "code,when,wear,text,source,mark\na,always,-,t,s,read\na,always,-,t,s,read\n",
		"stray space":    "code,when,wear,text,source,mark\na,always,-, t,s,read\n",
		"no head":        "",
	} {
		t.Run(name, func(t *testing.T) {
			_, err := read(strings.NewReader(text))
			assert.Error(t, err)
		})
	}
}

func TestWhatToWearIsListedOnceAndSuppliedAirReplacesFilters(t *testing.T) {
	spray := Wear(For(Signs{"hazard:isocyanate", "hazard:solvent", "method:hvlp"}))
	assert.Equal(t, []string{"goggles", "supplied-air respirator", "nitrile gloves", "overall with hood"}, spray)
	brush := Wear(For(Signs{"hazard:solvent"}))
	assert.Equal(t, []string{"organic-vapour respirator with particle filter", "goggles", "nitrile gloves"}, brush)
}

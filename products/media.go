package products

// Media is a blast abrasive. What one pass breaks depends on pressure and
// substrate; published figures for one abrasive differ several times over, so
// the likely value comes with low and high.
type Media struct {
	Common
	BulkDensityKgM3      float64              `json:"bulk_density_kg_m3" limit:"[50,8000]" doc:"mass of a loose cubic metre"`
	BreakdownPercent     float64              `json:"breakdown_percent" limit:"(0,100]" doc:"share lost in one pass, likely; 100 is thrown once"`
	BreakdownLowPercent  *float64             `json:"breakdown_low_percent,omitempty" limit:"(0,100]" doc:"lowest likely share"`
	BreakdownHighPercent *float64             `json:"breakdown_high_percent,omitempty" limit:"(0,100]" doc:"highest likely share"`
	Breakdowns           []SubstrateBreakdown `json:"breakdown_by_substrate,omitempty" doc:"measured on one substrate; the source says under what conditions"`
	SizeLowUM            *float64             `json:"size_low_um,omitempty" limit:"(0,10000]" doc:"smallest grain"`
	SizeHighUM           *float64             `json:"size_high_um,omitempty" limit:"(0,10000]" doc:"largest grain"`
	Mohs                 *float64             `json:"mohs,omitempty" limit:"(0,10]" doc:"hardness on Mohs' scale"`
	DustAs               string               `json:"dust_as,omitempty" doc:"sand, grit or shot where published dust factors hold; left out for all other media"`
	BreakdownAtKPa       *float64             `json:"breakdown_at_kpa,omitempty" limit:"(0,1400]" doc:"gauge pressure at which the breakdown by substrate was measured"`
	StripAtBoreMM        *float64             `json:"strip_at_bore_mm,omitempty" limit:"[0.5,50]" doc:"nozzle for which the strip rate holds"`
	StripAtKPa           *float64             `json:"strip_at_kpa,omitempty" limit:"(0,1400]" doc:"gauge pressure for which the strip rate holds"`
	StripAtFilmUM        *float64             `json:"strip_at_film_um,omitempty" limit:"(0,20000]" doc:"thickness of old paint for which the strip rate holds"`
	StripRateM2H         *float64             `json:"strip_rate_m2_h,omitempty" limit:"(0,1000]" doc:"area one nozzle strips in an hour at work, likely; see the source, most are assumptions"`
	StripRateLowM2H      *float64             `json:"strip_rate_low_m2_h,omitempty" limit:"(0,1000]" doc:"lowest likely rate"`
	StripRateHighM2H     *float64             `json:"strip_rate_high_m2_h,omitempty" limit:"(0,1000]" doc:"highest likely rate"`
}

// SubstrateBreakdown is the share of the abrasive lost in one pass on one
// substrate.
type SubstrateBreakdown struct {
	Substrate        string  `json:"substrate" doc:"what was blasted"`
	BreakdownPercent float64 `json:"breakdown_percent" limit:"(0,100]" doc:"share lost in one pass"`
}

// DustClasses lists the abrasives that published dust factors know.
func DustClasses() []string { return []string{"sand", "grit", "shot"} }

// Check reports every fault in the abrasive.
func (m *Media) Check(report func(pointer, code, detail string)) {
	check(m, report)
	if m.DustAs != "" {
		oneOf("/dust_as", m.DustAs, DustClasses(), report)
	}
	ordered(report, []rung{{"breakdown_low_percent", m.BreakdownLowPercent}, {"breakdown_percent", &m.BreakdownPercent}, {"breakdown_high_percent", m.BreakdownHighPercent}})
	ordered(report, []rung{{"size_low_um", m.SizeLowUM}, {"size_high_um", m.SizeHighUM}})
	ordered(report, []rung{{"strip_rate_low_m2_h", m.StripRateLowM2H}, {"strip_rate_m2_h", m.StripRateM2H}, {"strip_rate_high_m2_h", m.StripRateHighM2H}})
}

package products

// Disc is a coated abrasive: disc or sheet.
type Disc struct {
	Common
	AreaM2 float64  `json:"area_m2" limit:"(0,1000]" doc:"area one piece prepares before it is worn"`
	Grit   *float64 `json:"grit,omitempty" limit:"[8,10000]" doc:"grit number"`

	Abrasive string `json:"abrasive,omitempty" doc:"aluminium_oxide, silicon_carbide, zirconia or ceramic"`
}

// Check reports every fault in the disc.
func (d *Disc) Check(report func(pointer, code, detail string)) {
	check(d, report)
	if d.Abrasive != "" {
		oneOf("/abrasive", d.Abrasive, Abrasives(), report)
	}
}

// Abrasives lists what discs are coated with.
func Abrasives() []string {
	return []string{"aluminium_oxide", "silicon_carbide", "zirconia", "ceramic"}
}

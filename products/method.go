package products

// Method is a way to apply paint.
type Method struct {
	ID                        string `json:"id"`
	Name                      string `json:"name"`
	TransferEfficiencyPercent Value  `json:"transfer_efficiency_percent"` // share of the solids used that lands
	RateM2H                   Value  `json:"rate_m2_h"`                   // area one person coats in an hour, one coat
	PassWetFilmUM             Value  `json:"pass_wet_film_um"`            // wet film that one pass leaves
	CleaningL                 Value  `json:"cleaning_l"`                  // solvent to clean gun, hose and cup, or brush, after a batch
	Note                      string `json:"note,omitempty"`

	PartEfficiencies []PartEfficiency `json:"part_efficiencies,omitempty"` // by the size of the parts
}

// PartEfficiency is the transfer efficiency of a method on parts of one size.
type PartEfficiency struct {
	PartSize                  string `json:"part_size"`
	TransferEfficiencyPercent Value  `json:"transfer_efficiency_percent"`
}

// EfficiencyOn returns the transfer efficiency on parts of a size: that of the
// method where the size makes no difference to it or is not given.
func (m Method) EfficiencyOn(partSize string) Value {
	for _, e := range m.PartEfficiencies {
		if e.PartSize == partSize {
			return e.TransferEfficiencyPercent
		}
	}
	return m.TransferEfficiencyPercent
}

// PartSize is a class of parts that the transfer efficiency depends on.
type PartSize struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Note string `json:"note,omitempty"`
}

// What the rate of an operation is over.
const (
	NozzleOn = "nozzle_on"
	Burdened = "burdened"
)

// Operation is other work done by hand, with the rate of one person.
type Operation struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Rate Value  `json:"rate"` // m²/h, or m/h of tape for mask

	// Basis says what the rate is over: nozzle_on, the tool at work, or burdened,
	// the whole shift with set-up, clean-up and waste, for a film of 25.4 µm.
	Basis string `json:"basis"`
}

package products

// Hazard is a code for what a product can do, with the caution in one line. The
// safety data sheet of the product in hand comes first.
type Hazard struct {
	Code    string `json:"code"`
	Meaning string `json:"meaning"`
}

// Hazards lists the codes a product may carry. Meanings are common practice;
// the codes are this program's own and no legal classification.
func Hazards() []Hazard {
	return []Hazard{
		{"isocyanate", "hardener gives off isocyanates: supplied air, no work for anyone sensitised"},
		{"sensitiser", "can sensitise skin or lungs: gloves, no skin contact"},
		{"solvent", "flammable vapour that harms when breathed: ventilate, no ignition source, suitable respirator"},
		{"chromate", "holds hexavalent chromium, which causes cancer: licensed practice, contained waste"},
		{"lead", "holds lead: contained work, health checks, hazardous waste"},
		{"acid", "burns skin and eyes: face shield, gloves, rinse water at hand"},
		{"alkali", "burns skin and eyes, attacks aluminium: face shield, gloves, rinse well"},
		{"dust", "dust that harms when breathed: respirator, containment"},
		{"silica", "may set free crystalline silica: supplied-air hood, containment"},
		{"combustible_dust", "its dust can explode: ground everything, keep ignition sources away"},
		{"corrosive_residue", "what stays behind corrodes metal: rinse, inspect laps and drains"},
	}
}

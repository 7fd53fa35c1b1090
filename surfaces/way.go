package surfaces

// Way is a way of finding an area, with how far the result may lie from the
// real part.
type Way struct {
	Name            string  `json:"name"`
	AccuracyPercent float64 `json:"accuracy_percent"` // half width of the likely error
	Basis           string  `json:"basis"`
}

const (
	wayGiven     = "given"
	wayTaped     = "taped"
	waySection   = "section"
	wayStations  = "stations"
	wayPressed   = "pressed"
	wayCatalogue = "catalogue"
	waySharp     = "catalogue without radii"
	wayAllowance = "allowance"
)

// Ways lists every way in which this package finds an area. No published
// figures for these errors were found, so they are common practice and say
// what they rest on; an estimate may replace them by its own.
func Ways() []Way {
	return []Way{
		{wayGiven, 5, "area stated by the user without its working; common practice"},
		{wayTaped, 2, "exact for the shape; two lengths taped within 1 % each (common practice), whose errors add up in a product (identity)"},
		{waySection, 3, "as taped, and 1 % for the section: NACA 4-digit and circular-arc sections of the same thickness differ by 1.0 % at 12 % thickness (computed)"},
		{wayStations, 3, "as taped, and 1 % for fillets and bulges between the stations (common practice); what too few stations miss is estimated from them and added"},
		{wayPressed, 4, "as taped, and 2 % for the true form of the corrugation: arc and sine forms of one pitch and depth differ by up to 2 % (computed)"},
		{wayCatalogue, 1, "profile from nominal dimensions with its radii, which gives printed perimeters to their last digit (computed); rolling tolerance, common practice"},
		{wayAllowance, 50, "area added as a percentage for laps, rivets and gaps that were not measured; assumption"},
		{waySharp, 4, "profile without its radii: 2.0 to 3.7 % too large on wide-flange sections (computed)"},
	}
}

// accuracy returns the figure of a way; every name used is in Ways, which a
// test asserts.
func accuracy(way string) float64 {
	for _, w := range Ways() {
		if w.Name == way {
			return w.AccuracyPercent
		}
	}
	return 100
}

// AccuracyOf returns how far an area found in a way may lie from the real part,
// in percent; 100 for a way that is not in Ways.
func AccuracyOf(way string) float64 { return accuracy(way) }

package quantity

import "strings"

// suffixes are the units a wire name may end in, longest first, with the way
// they are printed beside a number.
var suffixes = []struct{ suffix, printed string }{
	{"_m3_min", "m³/min"}, {"_kg_m2", "kg/m²"}, {"_kg_m3", "kg/m³"}, {"_kg_kg", "kg/kg"}, {"_kg_l", "kg/L"}, {"_kg_h", "kg/h"},
	{"_m2_l", "m²/L"}, {"_l_m2", "L/m²"}, {"_m2_h", "m²/h"}, {"_l_h", "L/h"}, {"_g_l", "g/L"}, {"_g_m3", "g/m³"}, {"_m_s", "m/s"}, {"_m_h", "m/h"},
	{"_percent", "%"}, {"_ratio", ""}, {"_min", "min"}, {"_kpa", "kPa"}, {"_deg", "°"},
	{"_um", "µm"}, {"_mm", "mm"}, {"_m2", "m²"}, {"_m3", "m³"}, {"_kg", "kg"}, {"_kw", "kW"},
	{"_m", "m"}, {"_l", "L"}, {"_g", "g"}, {"_h", "h"}, {"_c", "°C"},
}

// SuffixOf returns the unit suffix of a wire name without its underscore, such
// as m2_l for practical_spreading_rate_m2_l, and "" for a name without one.
func SuffixOf(name string) string {
	for _, s := range suffixes {
		if strings.HasSuffix(name, s.suffix) {
			return s.suffix[1:]
		}
	}
	return ""
}

// UnitOf returns the unit of a wire name as printed: µm for dry_film_um.
func UnitOf(name string) string {
	for _, s := range suffixes {
		if strings.HasSuffix(name, s.suffix) {
			return s.printed
		}
	}
	return ""
}

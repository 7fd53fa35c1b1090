// Package quantity holds what every computed number of filmbuild carries with
// it: the limits of its inputs and the working behind its value.
//
// Numbers are float64 in SI; the unit is the suffix of the field's name
// (area_m2, dry_film_um). The package knows no shape, no paint and no job.
package quantity

// Working is how one number was found, in a form that a person can check with
// a pocket calculator.
type Working struct {
	Quantity string             `json:"quantity"`     // the field's name, such as paint_l
	Of       string             `json:"of,omitempty"` // product or part, where a step has several
	Value    float64            `json:"value"`
	Unit     string             `json:"unit"`    // as printed beside the value: L, kg, m², h
	Formula  string             `json:"formula"` // in the symbols of Terms
	Terms    map[string]float64 `json:"terms"`   // symbol to value, SI
	Source   string             `json:"source"`  // where the formula was published, or "identity"
}

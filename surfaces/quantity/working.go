// Package quantity holds what every computed number of filmbuild carries with
// it: the limits of its inputs and the working behind its value.
//
// Numbers are float64 in SI; the unit is the suffix of the field's name
// (area_m2, dry_film_um). The package knows no shape, no paint and no job.
package quantity

// Working is how one number was found, in a form that a person can check with
// a pocket calculator. Its formula is the one that is run: a test works out
// every formula from its terms, and the ranges and the workbook follow Links.
type Working struct {
	Quantity string             `json:"quantity"`     // the field's name, such as paint_l
	Of       string             `json:"of,omitempty"` // product or part, where a step has several
	Value    float64            `json:"value"`
	Unit     string             `json:"unit"`    // as printed beside the value: L, kg, m², h
	Formula  string             `json:"formula"` // in the symbols of Terms; "sum of …" or "by …" where it is no expression
	Terms    map[string]float64 `json:"terms"`   // symbol to value, SI
	Source   string             `json:"source"`  // where the formula was published, or "identity"

	Links []Link `json:"-"` // where the terms come from; a term without a link is a constant of this working
	Uses  string `json:"-"` // id of the product of which the value is consumed, where it is
}

// Link says where the value of a term comes from: value = Times · node, or
// Times / node where Inverse is set.
type Link struct {
	Term    string
	Node    Node
	Times   float64 // factor between the node's unit and the term's; 0 stands for 1
	Inverse bool
}

// Node names a number that others are worked out from: an input of the job or
// the catalogue, or the value of another working.
//
//	{"setting", "prime", "dry_film_um", ""}                  a field of a step, by the id of the step
//	{"component", "tailplane", "existing_film_um", ""}       a field of a component; also "region" and "item"
//	{"job", "", "tax_percent", ""}                           a field of the job; of its labour: {"job", "labour", "paid_rate", ""}
//	{"product", "epoxy-primer", "volume_solids_percent", ""} a value of the catalogue; also "method" and "operation"
//	{"face", "tailplane", "upper", ""}                       the area of a face, of all parts together
//	{"marking", "roundel", "area_m2", "white"}               what a marking comes to, of all painted together
//	{"patches", "bare", "rate_m2_h", ""}                     what the test patches of a step gave
//	{"step", "prime", "paint_l", "epoxy-primer"}             a working of a step: quantity and of
//	{"order", "epoxy-primer", "needed", ""}                  a working of a line of the order
//	{"budget", "", "cash", ""}                               a working of the budget
type Node struct {
	Kind     string
	ID       string
	Quantity string
	Of       string
}

// From links a term to a node that has the same value.
func From(term string, node Node) Link { return Link{Term: term, Node: node} }

// Scaled links a term to a node that it is times as large as.
func Scaled(term string, node Node, times float64) Link {
	return Link{Term: term, Node: node, Times: times}
}

// StepWorking is the node of a working of a step.
func StepWorking(step, name, of string) Node {
	return Node{Kind: "step", ID: step, Quantity: name, Of: of}
}

// Setting is the node of a field of a step.
func Setting(step, field string) Node { return Node{Kind: "setting", ID: step, Quantity: field} }

// Carry gives the value of the term for a value of the node.
func (l Link) Carry(value float64) float64 {
	times := l.Times
	if times == 0 {
		times = 1
	}
	if l.Inverse {
		return times / value
	}
	return times * value
}

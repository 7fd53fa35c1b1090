package estimate

import (
	"strconv"
	"strings"

	"filmbuild/estimate/model"
	"filmbuild/estimate/risk"
	"filmbuild/estimate/spread"
	"filmbuild/estimate/wire"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// Uncertain is an input of the graph that has a range.
type Uncertain struct {
	Vertex  int
	Key     string // tells its draws: the same in every job that has this input
	Name    string // for people
	Pointer string // in the job, where the job gives the number
	Unit    string
	Group   string // correlation group of an item
	Spread  risk.Spread
	Source  string
}

// uncertain lists the inputs with a range: the job's own ranges, the accuracy of
// each component's area, the spreads of the catalogue where the job does not give
// the number, and those by kind of figure and where it came from. A number that
// the job gives as a range without width is certain.
func (r *run) uncertain(m *model.Model) ([]Uncertain, error) {
	rules, err := spread.Load()
	if err != nil {
		return nil, err
	}
	var list []Uncertain
	for _, vertex := range m.Inputs() {
		v := &m.Vertices[vertex]
		u := Uncertain{Vertex: vertex, Key: r.key(v.Node), Name: r.nameOf(v.Node), Pointer: r.pointerOf(v.Node), Unit: r.unitOf(v.Node)}
		if r.rangeOf(&u, v, rules) && u.Spread.Varies() {
			list = append(list, u)
		}
	}
	return list, nil
}

// key tells an input by ids, so that it is the same in a job that has other
// steps before it.
func (r *run) key(n quantity.Node) string {
	if n.Kind == "given" {
		return "given" + wire.ByID(r.job, n.Quantity)
	}
	return strings.TrimRight(n.Kind+"/"+n.ID+"/"+n.Quantity+"/"+n.Of, "/")
}

func (r *run) unitOf(n quantity.Node) string {
	switch {
	case n.Kind == "item", n.Kind == "job" && n.ID == "labour":
		return r.job.Currency
	case n.Kind == "operation":
		return "" // told by the catalogue's value
	}
	return quantity.UnitOf(n.Quantity)
}

// rangeOf finds the range of an input, where it has one.
func (r *run) rangeOf(u *Uncertain, v *model.Vertex, rules spread.Rules) bool {
	n := v.Node
	if given, ok := r.job.Ranges[u.Pointer]; ok && u.Pointer != "" {
		u.Spread = risk.Spread{Low: given.Low, Likely: given.Likely, High: given.High, Distribution: given.Distribution}
		u.Source = "the job"
		if n.Kind == "item" {
			for i := range r.job.Items {
				if r.job.Items[i].ID == n.ID && r.job.Items[i].CorrelationGroup != "" {
					u.Group = "group/" + r.job.Items[i].CorrelationGroup
				}
			}
		}
		return true
	}
	switch n.Kind {
	case "component":
		if k, known := r.componentAt[n.ID]; known && n.Quantity == measuring("").Quantity {
			off := min(r.surfaces[k].accuracy()/100, 0.9)
			u.Spread = risk.Spread{Low: 1 - off, Likely: 1, High: 1 + off, Distribution: risk.PERT}
			u.Source = "accuracy of the area: " + r.surfaces[k].one.Method
			return true
		}
	case "patches":
		var known bool
		if u.Spread, u.Source, known = r.patchSpread(n, v.Value); known {
			return true
		}
	case "product", "method", "operation":
		if value, known := r.bookValue(n); known {
			u.Unit, u.Source = value.Unit, value.Text()
			var varies bool
			if u.Spread, varies = spread.Within(value.Low, value.Likely, value.High, v.Value); varies {
				return true
			}
		}
	}
	var ruled bool
	u.Spread, u.Source, ruled = rules.Of(n.Kind, n.Quantity, v.Value)
	return ruled
}

// bookValue returns the value of the catalogue that a node names.
func (r *run) bookValue(n quantity.Node) (products.Value, bool) {
	switch n.Kind {
	case "method":
		if method, known := r.catalogue.Method(n.ID); known {
			switch n.Quantity {
			case "transfer_efficiency_percent":
				return method.TransferEfficiencyPercent, true
			case "rate_m2_h":
				return method.RateM2H, true
			}
		}
	case "operation":
		if operation, known := r.catalogue.Operation(n.ID); known {
			return operation.Rate, true
		}
	case "product":
		for _, v := range r.catalogue.Values(n.ID) {
			if v.Quantity == n.Quantity && v.Substrate == n.Of {
				return v, true
			}
		}
	}
	return products.Value{}, false
}

// pointerOf returns the JSON pointer of a node that the job holds, or "".
func (r *run) pointerOf(n quantity.Node) string {
	at := func(list string, k int) string { return "/" + list + "/" + strconv.Itoa(k) + "/" + n.Quantity }
	switch n.Kind {
	case "given":
		return n.Quantity
	case "job":
		if n.ID != "" {
			return "/" + n.ID + "/" + n.Quantity
		}
		return "/" + n.Quantity
	case "setting":
		for i, s := range r.job.Steps {
			if s != nil && s.base().ID == n.ID {
				return at("steps", i)
			}
		}
	case "component":
		if k, known := r.componentAt[n.ID]; known && n.Quantity != measuring("").Quantity {
			return at("components", k)
		}
	case "region":
		if k, known := r.regionAt[n.ID]; known {
			return at("regions", k)
		}
	case "item":
		for i := range r.job.Items {
			if r.job.Items[i].ID == n.ID {
				return at("items", i)
			}
		}
	case "product":
		if k, own := r.productAt[n.ID]; own {
			return at("products", k)
		}
	}
	return ""
}

// nameOf tells people what a node is.
func (r *run) nameOf(n quantity.Node) string {
	name := strings.ReplaceAll(strings.TrimSuffix(n.Quantity, "_"+quantity.SuffixOf(n.Quantity)), "_", " ")
	switch n.Kind {
	case "component":
		if n.Quantity == measuring("").Quantity {
			return "measured area of " + n.ID
		}
	case "given":
		return strings.TrimPrefix(n.Quantity, "/")
	case "setting":
		return name + " of step " + n.ID
	case "patches":
		return name + " by the test patches of step " + n.ID
	case "job":
		return name
	}
	if n.ID == "" {
		return name
	}
	return name + " of " + n.ID
}

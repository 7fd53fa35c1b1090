package estimate

import (
	"errors"
	"strconv"

	"filmbuild/estimate/risk"
)

// Correlation says that two items, or two groups of items, vary together in
// part. Items of one correlation_group vary together wholly.
type Correlation struct {
	A     string  `json:"a" doc:"id of an item, or a correlation_group"`
	B     string  `json:"b" doc:"id of another item, or another correlation_group"`
	Ratio float64 `json:"ratio" limit:"[-1,1]" doc:"their correlation: 1 together, 0 not at all, -1 one up and the other down"`
}

// Source names what an item's money is drawn by: its group's score, or its own.
func (i *Item) Source() string {
	if i.CorrelationGroup != "" {
		return "group/" + i.CorrelationGroup
	}
	if i.UnitPrice != nil {
		return "item/" + i.ID + "/unit_price"
	}
	return "item/" + i.ID + "/amount"
}

// Correlated are the job's correlations by the sources of its items.
func (j *Job) Correlated() []risk.Correlation {
	list := make([]risk.Correlation, 0, len(j.Correlations))
	for _, c := range j.Correlations {
		list = append(list, risk.Correlation{A: j.sourceOf(c.A), B: j.sourceOf(c.B), Ratio: c.Ratio})
	}
	return list
}

// sourceOf is the source of an item or a group, and "" where there is neither.
func (j *Job) sourceOf(name string) string {
	group := ""
	for i := range j.Items {
		switch {
		case j.Items[i].ID == name:
			return j.Items[i].Source()
		case j.Items[i].CorrelationGroup == name && name != "":
			group = j.Items[i].Source()
		}
	}
	return group
}

// ItemSpread is the range of what an item's money varies by: its amount, or its
// unit price. An item without a range does not vary.
func (j *Job) ItemSpread(i int) risk.Spread {
	for _, field := range []string{"amount", "unit_price"} {
		if r, given := j.Ranges["/items/"+strconv.Itoa(i)+"/"+field]; given {
			return risk.Spread{Low: r.Low, Likely: r.Likely, High: r.High, Distribution: r.Distribution}
		}
	}
	return risk.Spread{Low: 1, Likely: 1, High: 1, Distribution: risk.PERT}
}

// correlations notes those that name nothing, tie a thing to itself, or together
// can hold of no numbers at all.
func (c *checker) correlations() {
	pairs := map[[2]string]string{}
	sound := true
	for i, one := range c.job.Correlations {
		at := "/correlations/" + strconv.Itoa(i)
		a, b := c.job.sourceOf(one.A), c.job.sourceOf(one.B)
		for _, end := range []struct{ field, name, source string }{{"a", one.A, a}, {"b", one.B, b}} {
			switch {
			case end.name == "":
				c.faults.Addf(at+"/"+end.field, "required", "%s is missing; give the id of an item or a correlation_group", end.field)
			case end.source == "":
				c.faults.Addf(at+"/"+end.field, "unknown_reference", "there is no item and no correlation_group %q", clip(end.name))
			}
		}
		if a != "" && a == b {
			c.faults.Add(at+"/b", "inconsistent", "a and b vary together already: they are one item or lie in one correlation_group; leave this correlation out")
		}
		if before, twice := pairs[[2]string{a, b}]; twice && a != "" && b != "" {
			c.faults.Addf(at, "duplicate_id", "these two are correlated by %s already; keep one of them", before)
		}
		pairs[[2]string{a, b}], pairs[[2]string{b, a}] = at, at
		sound = sound && !c.faults.HasBelow(at)
	}
	if len(c.job.Correlations) == 0 || !sound || len(c.job.Correlations) > MostCorrelations || c.faults.HasBelow("/items") {
		return
	}
	inputs := make([]risk.Input, len(c.job.Items))
	for i := range c.job.Items {
		inputs[i] = risk.Input{Key: c.job.Items[i].Source(), Spread: c.job.ItemSpread(i)}
	}
	if _, err := risk.NewSampler(inputs, c.job.Correlated(), 0); errors.Is(err, risk.ErrNotPositiveDefinite) {
		c.faults.Add("/correlations", "inconsistent", "the correlations contradict each other: no amounts can have them all (their matrix is not positive definite); bring the ratios nearer to 0, and give items that are wholly tied one correlation_group")
	}
}

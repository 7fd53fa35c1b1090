package estimate

import "slices"

// assumptions gathers what the estimate rests on, each once, with the steps
// that need it, in the order of their first use.
type assumptions struct{ list []Assumption }

// add notes an assumption. step is empty where it concerns the whole job.
func (a *assumptions) add(step, text string, value float64, unit, source string) {
	k := slices.IndexFunc(a.list, func(known Assumption) bool { return known.Text == text && known.Value == value })
	if k < 0 {
		k = len(a.list)
		a.list = append(a.list, Assumption{Text: text, Value: value, Unit: unit, Source: source})
	}
	if step != "" && !slices.Contains(a.list[k].Steps, step) {
		a.list[k].Steps = append(a.list[k].Steps, step)
	}
}

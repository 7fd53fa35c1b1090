package chain

// StepEdges finds gloss that goes over a face of which part was stripped and
// part keeps its old paint, from the traces of the pieces of that face. The
// edge counts as sanded out when the old paint was sanded after the stripping.
// Each face is told once, at its first gloss coat.
func StepEdges(pieces []Trace) (Finding, bool) {
	over := map[string][]Cover{}
	var order []string
	for _, t := range pieces {
		for _, c := range t.Covers {
			if over[c.Step] == nil {
				order = append(order, c.Step)
			}
			over[c.Step] = append(over[c.Step], c)
		}
	}
	for _, step := range order {
		for _, stripped := range over[step] {
			for _, old := range over[step] {
				if stripped.Stripped >= 0 && !stripped.Old && old.Old && old.Sanded < stripped.Stripped {
					r := ruleOf()["step_edges"]
					return Finding{Step: step, Code: r.Code, Text: r.Text, Source: r.Source}, true
				}
			}
		}
	}
	return Finding{}, false
}

package products

import "slices"

func (l *loader) marks() {
	seen := map[string]row{}
	for _, r := range l.rows("marks.csv") {
		mark := Mark{Mark: r.required("mark"), Meaning: r.required("meaning")}
		once(seen, mark.Mark, r, "mark", "mark")
		l.c.marks = append(l.c.marks, mark)
	}
}

func (l *loader) sources() {
	seen := map[string]row{}
	for _, r := range l.rows("sources.csv") {
		source := Source{Key: id(r, "source"), Title: r.required("title"), Since: r.text("since"), Note: r.text("note")}
		once(seen, source.Key, r, "source", "source")
		l.c.sources = append(l.c.sources, source)
	}
}

// provenance reads where a record comes from. A source or a mark that is not
// listed is noted, unless its whole list could not be read.
func (l *loader) provenance(r row) Provenance {
	p := Provenance{Source: r.required("source"), Page: r.text("page"), Ref: r.text("ref"), Mark: r.required("mark"), Since: r.text("since"), Note: r.text("note")}
	i := slices.IndexFunc(l.c.sources, func(s Source) bool { return s.Key == p.Source })
	if i >= 0 {
		p.Title = l.c.sources[i].Title
	} else if p.Source != "" && len(l.c.sources) > 0 {
		r.fault("source", "%q is not listed in sources.csv", clip(p.Source))
	}
	listed := slices.ContainsFunc(l.c.marks, func(m Mark) bool { return m.Mark == p.Mark })
	if !listed && p.Mark != "" && len(l.c.marks) > 0 {
		r.fault("mark", "%q is not listed in marks.csv", clip(p.Mark))
	}
	return p
}

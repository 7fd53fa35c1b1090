package mesh

import "fmt"

// Warning says that a mesh was measured although something is wrong with it.
type Warning struct {
	Code   string `json:"code"` // stable
	Detail string `json:"detail"`
	Count  int64  `json:"count,omitempty"` // how often, where that can be counted
	First  Place  `json:"first,omitzero"`  // the first time, in the file
}

// warnings gathers one entry per code, however often it comes.
type warnings struct{ list []Warning }

// add counts one more of a code; the first one sets text and place.
func (w *warnings) add(code string, at Place, detail string, args ...any) {
	for i := range w.list {
		if w.list[i].Code == code {
			w.list[i].Count++
			return
		}
	}
	w.list = append(w.list, Warning{Code: code, Detail: fmt.Sprintf(detail, args...), Count: 1, First: at})
}

// say adds a warning about the mesh as a whole.
func (w *warnings) say(code string, count int64, detail string, args ...any) {
	w.list = append(w.list, Warning{Code: code, Detail: fmt.Sprintf(detail, args...), Count: count})
}

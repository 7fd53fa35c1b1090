package products

// Tape is laid along edges.
type Tape struct {
	Common
	WidthMM float64 `json:"width_mm" limit:"(0,1000]" doc:"width of the tape"`
	Use     string  `json:"use,omitempty" doc:"masking, fine_line or blast"`
}

// TapeUses lists what a tape may be for.
func TapeUses() []string { return []string{"masking", "fine_line", "blast"} }

// Check reports every fault in the tape.
func (t *Tape) Check(report func(pointer, code, detail string)) {
	check(t, report)
	oneOf("/use", t.Use, TapeUses(), report)
}

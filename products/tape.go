package products

// Tape is laid along edges.
type Tape struct {
	Common
	WidthMM       float64  `json:"width_mm" limit:"(0,1000]" doc:"width of the tape"`
	Use           string   `json:"use,omitempty" doc:"masking, fine_line, blast or strip"`
	RemovalH      *float64 `json:"removal_h,omitempty" limit:"(0,10000]" doc:"longest it may stay on before its glue sets or it tears"`
	RemovalAtC    *float64 `json:"removal_at_c,omitempty" limit:"[-20,300]" doc:"temperature up to which that holds"`
	RemovalSource string   `json:"removal_source,omitempty" doc:"where the time of removal comes from, with its mark"`
}

// TapeUses lists what a tape may be for.
func TapeUses() []string { return []string{"masking", "fine_line", "blast", "strip"} }

// Check reports every fault in the tape.
func (t *Tape) Check(report func(pointer, code, detail string)) {
	check(t, report)
	oneOf("/use", t.Use, TapeUses(), report)
	if t.RemovalAtC != nil && t.RemovalH == nil {
		report("/removal_h", "required", "removal_at_c is given without removal_h; give the time that holds up to that temperature")
	}
}

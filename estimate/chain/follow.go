package chain

import (
	"slices"
	"strings"
)

// state is a piece after some of its acts.
type state struct {
	piece Piece
	trace Trace

	bare           bool // no old paint and no new one on it
	old            bool // old paint is on it
	dirt           *Act // what left dust or residue that no wash has taken off
	protected      *Act
	treated        *Act // since it was bared
	exposed        *Act // since when bare metal meets the air
	primed, etched *Act // new layers since it was bared or the job began
	painted        *Act
	opaque         bool   // a topcoat of any colour is on
	top            string // colour of the last topcoat
	stripped       int
	sanded         int
}

// Follow goes through the acts on one piece, in their order.
func Follow(piece Piece, acts []Act) Trace {
	s := state{piece: piece, old: piece.OldPaint, stripped: -1, sanded: -1}
	for i := range acts {
		s.take(&acts[i])
	}
	return s.trace
}

func (s *state) take(a *Act) {
	switch a.Work {
	case Blast, Strip, Sand:
		s.remove(a)
	case Scuff:
		s.sanded, s.dirt = a.Place, a
	case Wash:
		naked := s.bare && s.painted == nil
		if s.protected != nil && naked {
			s.exposed = a
		}
		s.dirt, s.protected = nil, nil
		if naked && s.piece.light() {
			s.check("water_break", a)
		}
	case Protect:
		s.protected, s.exposed = a, nil
	case Pretreat:
		s.pretreat(a)
	case Coat:
		s.ready(a)
		for _, p := range a.Paints {
			s.paint(a, p)
			s.cover(a, p)
		}
	case Mark:
		s.ready(a)
		for _, p := range a.Paints {
			s.paint(a, p)
		}
	}
}

// remove takes all paint off, old and new.
func (s *state) remove(a *Act) {
	if s.protected != nil && a.Work != Strip {
		s.find("protective_blasted", a, "before", s.protected.Step)
	}
	if s.painted != nil {
		s.find("strips_new", a, "before", s.painted.Step)
	}
	if s.old {
		s.stripped = a.Place
	}
	*s = state{piece: s.piece, trace: s.trace, bare: true, dirt: a, exposed: a, stripped: s.stripped, sanded: s.sanded}
	if a.Work == Blast && s.piece.rusts() {
		s.check("blast_clean", a)
	}
}

func (s *state) pretreat(a *Act) {
	s.clean(a)
	if s.old || s.painted != nil {
		s.find("treat_on_paint", a)
		return
	}
	s.treated = a
	if s.bare && s.piece.light() {
		s.check("water_break", a)
	}
}

// clean finds what was left on the surface that a treatment or a paint goes
// over; each is told once.
func (s *state) clean(a *Act) {
	if s.protected != nil {
		s.find("protective_left", a, "before", s.protected.Step)
		s.protected = nil
	}
	if s.dirt == nil {
		return
	}
	code := ""
	switch {
	case s.dirt.Work == Strip:
		code = "unwashed_strip"
	case s.dirt.Work == Blast && s.dirt.Corrosive:
		code = "residue"
	case s.dirt.Work == Blast && s.piece.light():
		code = "unwashed_blast"
	case s.dirt.Work != Blast:
		code = "unwashed_sand"
	}
	if code != "" { // dust on blasted steel is blown off: water would rust it
		s.find(code, a, "before", s.dirt.Step)
	}
	s.dirt = nil
}

// ready finds what is missing before the first paint of an act, whatever paint
// it is.
func (s *state) ready(a *Act) {
	s.clean(a)
	if s.old && s.painted == nil && s.sanded < 0 {
		s.find("not_scuffed", a)
	}
	if s.bare && s.painted == nil {
		s.waits(a)
	}
}

// paint finds what is missing under one paint.
func (s *state) paint(a *Act, p Paint) {
	naked := s.bare && s.primed == nil && s.painted == nil
	switch p.Role {
	case "primer":
		if naked && s.piece.light() && s.treated == nil && s.etched == nil {
			s.find("bare_untreated", a)
		}
	case "topcoat", "clear":
		switch {
		case naked:
			s.find("topcoat_on_bare", a, "paint", p.ID)
		case s.etched != nil && s.primed == nil && s.top == "" && !s.opaque:
			s.find("etch_alone", a, "paint", p.ID, "before", s.etched.Step)
		}
		s.colour(a, p)
	case "":
		if naked {
			s.find("role_unknown", a, "paint", p.ID)
		}
	}
}

// colour finds a colour that lies on primer, or on a colour that shows.
func (s *state) colour(a *Act, p Paint) {
	if slices.Contains(neutral(), p.Colour) || s.top == "white" || s.top == p.Colour {
		return
	}
	known := s.primed != nil || s.etched != nil || s.bare || s.opaque
	switch {
	case known && !s.opaque:
		s.find("colour_without_white", a, "colour", p.Colour)
	case s.opaque && s.top != "" && slices.Contains(weak(), p.Colour):
		s.find("colour_over_colour", a, "colour", p.Colour, "before", s.top)
	}
}

// cover puts one paint on.
func (s *state) cover(a *Act, p Paint) {
	if p.Gloss && p.Role != "primer" && p.Role != "etch_primer" {
		s.trace.Covers = append(s.trace.Covers, Cover{Step: a.Step, Old: s.old, Stripped: s.stripped, Sanded: s.sanded})
	}
	switch p.Role {
	case "primer":
		s.primed, s.opaque, s.top = a, false, ""
	case "etch_primer":
		s.etched = a
	case "topcoat":
		s.opaque, s.top = true, p.Colour
	}
	s.painted, s.exposed = a, nil
}

// metal is what bare surface is called.
func (s *state) metal() string {
	if s.piece.Substrate == "" {
		return "surface"
	}
	return strings.ReplaceAll(s.piece.Substrate, "_", " ")
}

func (s *state) find(code string, a *Act, words ...string) {
	r := ruleOf()[code]
	text := strings.NewReplacer(append(braced(words), "{metal}", s.metal())...).Replace(r.Text)
	s.trace.Findings = append(s.trace.Findings, Finding{Step: a.Step, Code: code, Text: text, Source: r.Source})
}

func (s *state) check(code string, a *Act) {
	r := ruleOf()[code]
	s.trace.Findings = append(s.trace.Findings, Finding{Step: a.Step, Code: code, Text: r.Text, Source: r.Source, Check: true})
}

// braced puts braces around every other word.
func braced(words []string) []string {
	list := make([]string, 0, len(words)+2)
	for i := 0; i+1 < len(words); i += 2 {
		list = append(list, "{"+words[i]+"}", words[i+1])
	}
	return list
}

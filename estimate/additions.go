package estimate

import (
	"strconv"

	"filmbuild/surfaces"
)

// Gap is the slot before a control surface: both of its faces are painted.
type Gap struct {
	Name   string  `json:"name,omitempty" doc:"what it is"`
	Face   string  `json:"face,omitempty" doc:"face whose area it adds to; spread over the faces in proportion where it is left out"`
	SpanM  float64 `json:"span_m" limit:"(0,500]" doc:"length of the gap"`
	DepthM float64 `json:"depth_m" limit:"(0,10]" doc:"how deep it is painted"`
}

// Lap is the edge of a sheet that laps over another.
type Lap struct {
	Name        string  `json:"name,omitempty" doc:"what it is"`
	Face        string  `json:"face,omitempty" doc:"face whose area it adds to; spread over the faces in proportion where it is left out"`
	LengthM     float64 `json:"length_m" limit:"(0,100000]" doc:"length of the edge"`
	ThicknessMM float64 `json:"thickness_mm" limit:"(0,100]" doc:"of the upper sheet"`
}

// Rivets are domed heads; a flush one adds nothing.
type Rivets struct {
	Face         string  `json:"face,omitempty" doc:"face whose area they add to; spread over the faces in proportion where it is left out"`
	Count        int     `json:"count" limit:"[1,10000000]" doc:"how many"`
	HeadHeightMM float64 `json:"head_height_mm" limit:"[0,50]" doc:"height of a head over the skin"`
}

// additions adds what stands out from the plain shape.
func (c *checker) additions(s *surface, at string) {
	n, taped := float64(s.component.Count), surfaces.AccuracyOf("taped")
	add := func(name, of, face, below string, one float64, formula string, terms map[string]float64, source string) {
		if faces, ok := s.named(c, face, below+"/face"); ok {
			s.change(change{name: name, of: of, areaM2: one * n, accuracy: taped, faces: faces, at: below, formula: formula, terms: terms, times: n, source: source})
		}
	}
	for i, g := range s.component.Gaps {
		add("gap_m2", g.Name, g.Face, at+"/gaps/"+strconv.Itoa(i), surfaces.GapArea(g.SpanM, g.DepthM), "2·s·d",
			map[string]float64{"s": g.SpanM, "d": g.DepthM}, "common practice (two flat faces)")
	}
	for i, l := range s.component.Laps {
		add("lap_m2", l.Name, l.Face, at+"/laps/"+strconv.Itoa(i), surfaces.LapArea(l.LengthM, l.ThicknessMM), "l·t",
			map[string]float64{"l": l.LengthM, "t": l.ThicknessMM / 1000}, "identity")
	}
	if r := s.component.Rivets; r != nil {
		add("rivets_m2", "", r.Face, at+"/rivets", surfaces.RivetArea(r.Count, r.HeadHeightMM), "m·π·h²",
			map[string]float64{"m": float64(r.Count), "h": r.HeadHeightMM / 1000}, "identity (sphere cap less its base)")
	}
}

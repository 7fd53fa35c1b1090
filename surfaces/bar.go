package surfaces

import (
	"fmt"
	"slices"
	"strings"
)

// Bar is a rolled, drawn or hollow section of some length. Its cut ends and
// the inside of a tube are not painted.
type Bar struct {
	Profile     Profile  `json:"profile" doc:"the section"`
	LengthM     float64  `json:"length_m" limit:"[0.001,500]" doc:"along the bar"`
	HiddenFaces []string `json:"hidden_faces,omitempty" doc:"faces that are not painted, such as the top under a deck"`
}

// Profile is the section of a bar, in the dimensions of section tables.
type Profile struct {
	Kind        string   `json:"kind" doc:"i (I and H sections), channel, angle, rect_tube, round_tube, round or flat"`
	HeightMM    *float64 `json:"height_mm,omitempty" limit:"[1,5000]" doc:"over all; of an angle, its first leg; of a flat, its thickness"`
	WidthMM     *float64 `json:"width_mm,omitempty" limit:"[1,5000]" doc:"over all; of i and channel, of the flange; of an angle, its second leg"`
	WebMM       *float64 `json:"web_mm,omitempty" limit:"[0.1,500]" doc:"of i and channel: thickness of the web"`
	FlangeMM    *float64 `json:"flange_mm,omitempty" limit:"[0.1,500]" doc:"of i and channel: thickness of the flange; only checked, the area does not depend on it"`
	WallMM      *float64 `json:"wall_mm,omitempty" limit:"[0.1,500]" doc:"of angle and tubes: only checked, the area does not depend on it"`
	DiameterMM  *float64 `json:"diameter_mm,omitempty" limit:"[1,5000]" doc:"of round_tube and round: outside"`
	RadiusMM    *float64 `json:"radius_mm,omitempty" limit:"[0,1000]" doc:"of i, channel and angle: between web and flange or between legs; of rect_tube: of its outer corners; 0 by default"`
	ToeRadiusMM *float64 `json:"toe_radius_mm,omitempty" limit:"[0,1000]" doc:"of an angle: at the ends of its legs; 0 by default"`
}

// Kind implements Shape.
func (*Bar) Kind() string { return "bar" }

// Check implements Shape.
func (s *Bar) Check(report func(pointer, code, detail string)) {
	clean := inRange(s, report)
	form, ok := profileOf(s.Profile.Kind)
	if !ok {
		oneOf("/profile/kind", s.Profile.Kind, report, profileKinds()...)
		return
	}
	clean = s.Profile.check(form, report) && clean
	var faces []string
	for _, f := range form.faces {
		faces = append(faces, f.name)
	}
	hidden := map[string]bool{}
	for i, h := range s.HiddenFaces {
		if at := fmt.Sprintf("/hidden_faces/%d", i); !slices.Contains(faces, h) {
			report(at, "unknown_reference", fmt.Sprintf("the profile has no face %q; it has %s", h, strings.Join(faces, ", ")))
		} else {
			hidden[h] = true
		}
	}
	if len(hidden) == len(faces) {
		report("/hidden_faces", "inconsistent", "every face is hidden; nothing is left to measure")
	}
	if clean {
		form.fit(s.Profile, report)
	}
}

// check reports dimensions that are missing for the form of profile, and those
// it has no use for.
func (p Profile) check(form profileForm, report reporter) bool {
	clean := true
	for _, d := range p.dimensions() {
		at := "/profile/" + d.name
		if slices.Contains(form.needs, d.name) {
			clean = given(at, d.value, report) && clean
		} else if !slices.Contains(form.takes, d.name) {
			clean = notApplicable(at, d.value, "the profile "+form.kind+" has no such dimension", report) && clean
		}
	}
	return clean
}

// dimension is one of a profile's sizes by its name on the wire.
type dimension struct {
	name  string
	value *float64
}

func (p Profile) dimensions() []dimension {
	return []dimension{
		{"height_mm", p.HeightMM}, {"width_mm", p.WidthMM}, {"web_mm", p.WebMM}, {"flange_mm", p.FlangeMM}, {"wall_mm", p.WallMM},
		{"diameter_mm", p.DiameterMM}, {"radius_mm", p.RadiusMM}, {"toe_radius_mm", p.ToeRadiusMM},
	}
}

// Measure implements Shape. The faces run the length of the bar and are those
// of the profile, less the hidden ones; they end at each other, at a hidden
// face and at the cut ends, the last two counting as Open.
func (s *Bar) Measure() Measurement {
	form, _ := profileOf(s.Profile.Kind)
	way := wayCatalogue
	if slices.Contains(form.takes, "radius_mm") && s.Profile.RadiusMM == nil {
		way = waySharp
	}
	m := Measurement{Method: "perimeter of the " + form.kind + " profile times length", AccuracyPercent: accuracy(way)}
	terms := map[string]float64{"l": s.LengthM}
	for _, d := range s.Profile.dimensions() {
		if d.value != nil || slices.Contains(form.takes, d.name) {
			terms[strings.TrimSuffix(d.name, "_mm")] = or(d.value, 0) / 1000
		}
	}
	shown := func(name string) string {
		if slices.Contains(s.HiddenFaces, name) {
			return Open
		}
		return name
	}
	for _, f := range form.faces {
		if shown(f.name) == Open {
			continue
		}
		width := f.width(s.Profile) / 1000
		m.face(f.name, width*s.LengthM, "l·("+f.formula+")", terms, form.source)
		m.edge(f.name, Open, 2*width)
	}
	for _, pair := range form.meet {
		if a, b := shown(pair[0]), shown(pair[1]); a != b {
			m.edge(a, b, s.LengthM)
		}
	}
	return m
}

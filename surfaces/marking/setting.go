package marking

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Setting is a text and how its letters are formed and spaced.
//
// Block letters follow a lettering rule, which gives width, stroke and spaces
// as parts of the height. The sans letters are those of an open font at a cap
// height of height_m; by themselves they satisfy no registration rule.
type Setting struct {
	Text           string   `json:"text" doc:"the letters; block has A to Z, 0 to 9 and the hyphen, sans all of Latin. Lines are divided by a line break; at most 2000 characters"`
	HeightM        float64  `json:"height_m" limit:"[0.001,100]" doc:"of the capitals"`
	Font           string   `json:"font" doc:"block (taken unless given) or sans"`
	Bold           bool     `json:"bold" doc:"the heavier sans letters; false unless given"`
	Rule           string   `json:"rule" doc:"lettering rule for width, stroke and spaces: registration (taken unless given), registration_1938, boat_plate, vessel_number, road_plate, iso_3098_b, label, label_light or din_1451"`
	GapRule        string   `json:"gap_rule" doc:"space between letters: rule (taken unless given: that of the lettering rule, and for sans the font's own), quarter or half of a letter's width, stroke (one stroke), or iso_3098_b (2/10 of the height, 6/10 between words)"`
	LinePitchRatio *float64 `json:"line_pitch_ratio" limit:"[0.5,20]" doc:"from line to line, as a part of the height; 1.3 for capitals only, 1.5 with small letters and 1.9 with accents unless given (ISO 3098 type B)"`
	Align          string   `json:"align" doc:"of lines: left (taken unless given), centre or right"`
	WideLetters    bool     `json:"wide_letters" doc:"M and W as wide as the rule allows; true unless given, false keeps them as wide as other letters"`
	Colour         string   `json:"colour" doc:"lower-case words"`
}

func usualSetting() Setting {
	return Setting{Font: "block", Rule: "registration", GapRule: "rule", Align: "left", WideLetters: true}
}

const mostLetters = 2000

// check reports every fault of the setting; each letter that the alphabet lacks
// is named once.
func (f *Setting) check(report reporter) (clean bool) {
	clean = true
	tell := func(pointer, code, detail string) { clean = false; report(pointer, code, detail) }
	checkColour("/colour", f.Colour, tell)
	oneOf("/font", f.Font, tell, "block", "sans")
	oneOf("/gap_rule", f.GapRule, tell, "rule", "quarter", "half", "stroke", "iso_3098_b")
	oneOf("/align", f.Align, tell, "left", "centre", "right")
	oneOf("/rule", f.Rule, tell, letterRuleNames()...)
	if f.Bold && f.Font == "block" {
		tell("/bold", "not_applicable", "bold is true and font is block, whose strokes the rule fixes; take font sans, or leave bold out")
	}
	if n := utf8.RuneCountInString(f.Text); n > mostLetters {
		tell("/text", "too_many", fmt.Sprintf("text has %d characters; at most %d in one marking", n, mostLetters))
		return false
	}
	face, err := f.face()
	if err != nil {
		return false // of an unknown rule, reported above
	}
	drawn, missing := false, map[rune]bool{}
	for _, r := range f.Text {
		if r == ' ' || r == '\n' || missing[r] {
			continue
		}
		one, found := face(r)
		switch {
		case !found || r == utf8.RuneError:
			missing[r] = true
			tell("/text", "unknown_reference", fmt.Sprintf("the %s alphabet has no letter %q; %s", f.Font, r, f.alphabetHint()))
		case len(one.outline) > 0:
			drawn = true
		}
	}
	if !drawn && len(missing) == 0 {
		tell("/text", "required", "text is empty; give the letters to be painted")
	}
	if clean && strings.Contains(f.Text, "\n") {
		f.checkLines(tell)
	}
	return clean
}

// mostEntangled is how many letters of several lines may run into each other,
// which keeps the work bounded.
const mostEntangled = 300

func (f *Setting) checkLines(report reporter) {
	if f.LinePitchRatio != nil && !(*f.LinePitchRatio >= 0.5) {
		return // out of range, reported already
	}
	places, _ := f.set()
	for _, group := range meeting(places) {
		if len(group) > mostEntangled && places[group[0]].at.Y != places[group[len(group)-1]].at.Y {
			report("/line_pitch_ratio", "overlap", fmt.Sprintf("%d letters of neighbouring lines run into each other at a pitch of %g; take at least %g, or fewer lines", len(group), f.linePitch(), 1.9))
			return
		}
	}
}

func (f *Setting) alphabetHint() string {
	if f.Font == "sans" {
		return "it has the letters of European languages, digits and common signs"
	}
	return "it has A to Z, 0 to 9 and the hyphen"
}

// face returns the letters of the setting, each formed once.
func (f *Setting) face() (func(r rune) (letter, bool), error) {
	rule, err := letterRuleOf(f.Rule)
	if err != nil {
		return nil, err
	}
	type entry struct {
		letter
		found bool
	}
	known := map[rune]entry{}
	var sans *sansFont
	if f.Font == "sans" {
		if sans, err = sansOf(f.Bold); err != nil {
			return nil, err
		}
	}
	return func(r rune) (letter, bool) {
		if e, ok := known[r]; ok {
			return e.letter, e.found
		}
		var e entry
		if sans == nil {
			e.letter, e.found = blockLetter(r, rule, f.WideLetters)
		} else if one, found, err := sans.letter(r); err == nil && unicode.IsPrint(r) {
			e.letter, e.found = one, found
		}
		known[r] = e
		return e.letter, e.found
	}, nil
}

// spaces are the gap between letters and that between words, as parts of the
// height; own says that the font's advances stand instead.
func (f *Setting) spaces(rule letterRule) (gap, group float64, own bool) {
	switch f.GapRule {
	case "quarter":
		return rule.width / 4, rule.groupGap, false
	case "half":
		return rule.width / 2, rule.groupGap, false
	case "stroke":
		return rule.stroke, rule.groupGap, false
	case "iso_3098_b":
		return 2.0 / 10, 6.0 / 10, false
	}
	return rule.gap, rule.groupGap, f.Font == "sans"
}

// linePitch is the distance of lines as a part of the height.
//
// Source: NF EN ISO 3098-0, type B: 13/10 for capitals only, 15/10 for letters
// without accents, 19/10 with accents.
func (f *Setting) linePitch() float64 {
	if f.LinePitchRatio != nil {
		return *f.LinePitchRatio
	}
	switch {
	case strings.IndexFunc(f.Text, func(r rune) bool { return r > unicode.MaxASCII && unicode.IsLetter(r) }) >= 0:
		return 1.9
	case strings.IndexFunc(f.Text, unicode.IsLower) >= 0:
		return 1.5
	}
	return 1.3
}

// set places every letter of the text, lines downwards from the first, whose
// letters stand on y = 0; and returns how far the pen went in the widest line.
// Lengths are parts of the height.
func (f *Setting) set() (places []place, width float64) {
	face, err := f.face()
	if err != nil {
		return nil, 0
	}
	rule, err := letterRuleOf(f.Rule)
	if err != nil {
		return nil, 0
	}
	lines := strings.Split(f.Text, "\n")
	widths, firsts := make([]float64, len(lines)), make([]int, len(lines)+1)
	for i, line := range lines {
		firsts[i] = len(places)
		y := -float64(i) * f.linePitch()
		places, widths[i] = f.setLine(line, y, rule, face, places)
		width = max(width, widths[i])
	}
	firsts[len(lines)] = len(places)
	share := map[string]float64{"centre": 0.5, "right": 1}[f.Align]
	for i := range lines {
		for k := firsts[i]; k < firsts[i+1]; k++ {
			places[k].at.X += share * (width - widths[i])
		}
	}
	return places, width
}

// place is a letter of the text and the origin it stands at.
type place struct {
	letter
	of rune
	at planar.Point
}

func (f *Setting) setLine(line string, y float64, rule letterRule, face func(rune) (letter, bool), places []place) ([]place, float64) {
	gap, group, own := f.spaces(rule)
	pen, due, begun := 0.0, 0.0, false
	for _, r := range strings.Trim(line, " ") {
		one, found := face(r)
		if own {
			if len(one.outline) > 0 {
				places = append(places, place{one, r, planar.Point{X: pen, Y: y}})
			}
			pen += one.advance
			continue
		}
		if !found || len(one.outline) == 0 {
			if begun {
				due = group
			}
			continue
		}
		places = append(places, place{one, r, planar.Point{X: pen + due - one.left, Y: y}})
		pen += due + one.right - one.left
		due, begun = gap, true
	}
	return places, pen
}

func (f *Setting) settingDimensions() []quantity.Working {
	rule, err := letterRuleOf(f.Rule)
	if err != nil {
		return nil
	}
	terms := map[string]float64{"H": f.HeightM}
	gap, group, own := f.spaces(rule)
	_, width := f.set()
	list := []quantity.Working{length("advance_m", width*f.HeightM, "by adding the widths and gaps of the longest line", terms, "identity")}
	if f.Font == "block" {
		terms := map[string]float64{"H": f.HeightM, "width": rule.width, "stroke": rule.stroke}
		list = append(list,
			length("letter_width_m", f.HeightM*rule.width, "H·width", terms, rule.source),
			length("stroke_width_m", f.HeightM*rule.stroke, "H·stroke", terms, rule.source))
	}
	if !own {
		terms := map[string]float64{"H": f.HeightM, "gap": gap, "group": group}
		list = append(list,
			length("gap_m", gap*f.HeightM, "H·gap", terms, f.gapSource(rule)),
			length("group_gap_m", group*f.HeightM, "H·group", terms, f.gapSource(rule)))
	}
	if strings.Contains(f.Text, "\n") {
		source := "NF EN ISO 3098-0, type B"
		if f.LinePitchRatio != nil {
			source = "given"
		}
		list = append(list, length("line_pitch_m", f.HeightM*f.linePitch(), "H·pitch", map[string]float64{"H": f.HeightM, "pitch": f.linePitch()}, source))
	}
	return list
}

func (f *Setting) gapSource(rule letterRule) string {
	switch f.GapRule {
	case "rule":
		return rule.source
	case "half":
		return "Air Regulations of 1938, as transcribed by a museum"
	case "iso_3098_b":
		return "NF EN ISO 3098-0, type B"
	case "quarter":
		return "14 CFR 45.29"
	}
	return "33 CFR 183.25: at least one stroke"
}

package surfaces

import (
	"fmt"
	"math"
)

// profileForm is one form of profile: the dimensions it needs and takes, its
// faces with their widths round the section, in mm, and which of them meet
// along a line (a pair once for each line).
type profileForm struct {
	kind, source string
	needs, takes []string
	faces        []profileFace
	meet         [][2]string
	fit          func(p Profile, report reporter)
}

type profileFace struct {
	name, formula string
	width         func(p Profile) float64
}

func profileKinds() []string {
	var kinds []string
	for _, f := range profileForms() {
		kinds = append(kinds, f.kind)
	}
	return kinds
}

func profileOf(kind string) (profileForm, bool) {
	for _, f := range profileForms() {
		if f.kind == kind {
			return f, true
		}
	}
	return profileForm{}, false
}

// Terms for the outlines; h, b and so on are the dimensions of a section table.
func (p Profile) h() float64  { return or(p.HeightMM, 0) }
func (p Profile) b() float64  { return or(p.WidthMM, 0) }
func (p Profile) tw() float64 { return or(p.WebMM, 0) }
func (p Profile) d() float64  { return or(p.DiameterMM, 0) }
func (p Profile) r() float64  { return or(p.RadiusMM, 0) }
func (p Profile) r2() float64 { return or(p.ToeRadiusMM, 0) }

// profileForms lists the forms. Where the corners are rounded, a fillet of
// radius r replaces 2r of straight outline by a quarter circle.
//
// Source: identity; printed section tables agree to their last digit
// (tests/published, reference section 5).
func profileForms() []profileForm {
	const source = "identity (outline of the section)"
	height := func(p Profile) float64 { return p.h() }
	width := func(p Profile) float64 { return p.b() }
	levelSide := func(p Profile) float64 { return p.b() - (2-math.Pi/2)*p.r() }
	uprightSide := func(p Profile) float64 { return p.h() - (2-math.Pi/2)*p.r() }
	around := func(p Profile) float64 { return math.Pi * p.d() }
	ring := [][2]string{{"top", "left"}, {"left", "bottom"}, {"bottom", "right"}, {"right", "top"}}
	return []profileForm{
		{
			"i", source, []string{"height_mm", "width_mm", "web_mm"}, []string{"flange_mm", "radius_mm"},
			[]profileFace{
				{"top", "width", width}, {"bottom", "width", width},
				{"sides", "2·height + 2·width − 2·web − (8−2π)·radius", func(p Profile) float64 { return 2*p.h() + 2*p.b() - 2*p.tw() - (8-2*math.Pi)*p.r() }},
			},
			[][2]string{{"top", "sides"}, {"top", "sides"}, {"bottom", "sides"}, {"bottom", "sides"}},
			func(p Profile, report reporter) {
				atMost("/profile/web_mm", p.tw()+2*p.r(), "web and both fillets", p.b(), "width", report)
				atMost("/profile/flange_mm", 2*or(p.FlangeMM, 0)+2*p.r(), "both flanges and fillets", p.h(), "height", report)
			},
		},
		{
			"channel", source, []string{"height_mm", "width_mm", "web_mm"}, []string{"flange_mm", "radius_mm"},
			[]profileFace{
				{"top", "width", width}, {"bottom", "width", width}, {"back", "height", height},
				{"inside", "height + 2·width − 2·web − (4−π)·radius", func(p Profile) float64 { return p.h() + 2*p.b() - 2*p.tw() - (4-math.Pi)*p.r() }},
			},
			[][2]string{{"top", "back"}, {"bottom", "back"}, {"top", "inside"}, {"bottom", "inside"}},
			func(p Profile, report reporter) {
				atMost("/profile/web_mm", p.tw()+p.r(), "web and fillet", p.b(), "width", report)
				atMost("/profile/flange_mm", 2*or(p.FlangeMM, 0)+2*p.r(), "both flanges and fillets", p.h(), "height", report)
			},
		},
		{
			"angle", source, []string{"height_mm", "width_mm"}, []string{"wall_mm", "radius_mm", "toe_radius_mm"},
			[]profileFace{
				{"back_1", "height", height}, {"back_2", "width", width},
				{"inside", "height + width − (2−π/2)·radius − (4−π)·toe_radius", func(p Profile) float64 {
					return p.h() + p.b() - (2-math.Pi/2)*p.r() - (4-math.Pi)*p.r2()
				}},
			},
			[][2]string{{"back_1", "back_2"}, {"back_1", "inside"}, {"back_2", "inside"}},
			func(p Profile, report reporter) {
				atMost("/profile/radius_mm", or(p.WallMM, p.r2())+p.r(), "wall or toe, and fillet", min(p.h(), p.b()), "shorter leg", report)
				atMost("/profile/toe_radius_mm", p.r2(), "toe radius", or(p.WallMM, min(p.h(), p.b())/2), "wall or half of the shorter leg", report)
			},
		},
		{
			"rect_tube", source, []string{"height_mm", "width_mm"}, []string{"wall_mm", "radius_mm"},
			[]profileFace{
				{"top", "width − (2−π/2)·radius", levelSide}, {"bottom", "width − (2−π/2)·radius", levelSide},
				{"left", "height − (2−π/2)·radius", uprightSide}, {"right", "height − (2−π/2)·radius", uprightSide},
			},
			ring,
			func(p Profile, report reporter) {
				atMost("/profile/radius_mm", 2*p.r(), "both corners", min(p.h(), p.b()), "shorter side", report)
				atMost("/profile/wall_mm", 2*or(p.WallMM, 0), "both walls", min(p.h(), p.b()), "shorter side", report)
			},
		},
		{
			"round_tube", source, []string{"diameter_mm"}, []string{"wall_mm"},
			[]profileFace{{"outside", "π·diameter", around}}, nil,
			func(p Profile, report reporter) {
				atMost("/profile/wall_mm", 2*or(p.WallMM, 0), "both walls", p.d(), "diameter", report)
			},
		},
		{
			"round", source, []string{"diameter_mm"}, nil,
			[]profileFace{{"outside", "π·diameter", around}}, nil, func(Profile, reporter) {},
		},
		{
			"flat", source, []string{"height_mm", "width_mm"}, nil,
			[]profileFace{{"top", "width", width}, {"bottom", "width", width}, {"left", "height", height}, {"right", "height", height}},
			ring, func(Profile, reporter) {},
		},
	}
}

// atMost reports dimensions that do not fit into each other, in mm.
func atMost(at string, value float64, what string, limit float64, whole string, report reporter) {
	if value > limit {
		report(at, "inconsistent", fmt.Sprintf("%s take %g mm, more than the %s of %g mm", what, value, whole, limit))
	}
}

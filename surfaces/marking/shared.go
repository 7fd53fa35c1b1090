package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

// Shared are the fields of all figures: how they are cut from film, what is
// painted under them and what they lie on.
type Shared struct {
	StencilMarginMM float64  `json:"stencil_margin_mm" limit:"[0,1000]" doc:"film left on every side of the figure's box; 50 unless given"`
	UnderColour     string   `json:"under_colour" doc:"colour put down under the whole figure first, such as white under red and yellow; none unless given: each colour goes on the bare base"`
	SkinRadiusM     *float64 `json:"skin_radius_m" limit:"(0,1000]" doc:"radius of the cylinder on which the figure lies, its middle facing the viewer; flat unless given"`
	SkinAxis        string   `json:"skin_axis" doc:"axis of that cylinder: level (as of a fuselage, taken unless given) or upright"`
	Sizes           string   `json:"sizes" doc:"how the sizes were measured: skin (along the surface, taken unless given) or projected (seen from the side, as on a drawing or a photograph)"`
}

// usualShared leaves a hand's breadth of film to burnish and to tape paper onto
// (common practice; no published figure found).
func usualShared() Shared {
	return Shared{StencilMarginMM: 50, SkinAxis: "level", Sizes: "skin"}
}

// StencilMargin implements Figure.
func (s *Shared) StencilMargin() float64 { return s.StencilMarginMM / 1000 }

func (s *Shared) shared() *Shared { return s }

func (s *Shared) check(report reporter) {
	if s.UnderColour != "" {
		checkColour("/under_colour", s.UnderColour, report)
	}
	oneOf("/skin_axis", s.SkinAxis, report, "level", "upright")
	oneOf("/sizes", s.Sizes, report, "skin", "projected")
	if s.Sizes == "projected" && s.SkinRadiusM == nil {
		report("/skin_radius_m", "required", "sizes is projected and skin_radius_m is missing; give the radius of the curved surface")
	}
}

// UnderColourOf is the colour that is put down under the whole of a figure first,
// "" for none.
func UnderColourOf(f Figure) string { return f.shared().UnderColour }

// painted is what each colour covers when it is sprayed: with an under colour,
// that colour covers the whole figure, and the others what they show.
func (s *Shared) painted(seen []ColourArea) []ColourArea {
	out := make([]ColourArea, 0, len(seen)+1)
	if s.UnderColour == "" {
		return append(out, seen...)
	}
	under := ColourArea{Colour: s.UnderColour}
	var moment planar.Point
	for _, c := range seen {
		under.AreaM2 += c.AreaM2
		moment.X, moment.Y = moment.X+c.AreaM2*c.CentroidXM, moment.Y+c.AreaM2*c.CentroidYM
	}
	under.CentroidXM, under.CentroidYM = moment.X/under.AreaM2, moment.Y/under.AreaM2
	out = append(out, under)
	for _, c := range seen {
		if c.Colour != s.UnderColour {
			out = append(out, c)
		}
	}
	return out
}

// onSkin lays a figure's arrangement onto its skin where its sizes are
// projected. The figure must leave a thousandth to the horizon: nearer, what is
// seen from the side says nothing of the length along the skin.
func (s *Shared) onSkin(a *planar.Arrangement) (planar.Measures, *Skin, error) {
	flat := a.Measures()
	if s.SkinRadiusM == nil {
		return flat, nil, nil
	}
	radius := *s.SkinRadiusM
	box := flat.Box
	round := box.Height()
	if s.SkinAxis == "upright" {
		round = box.Width()
	}
	skin := &Skin{RadiusM: radius, WidthM: box.Width(), HeightM: box.Height(), ProjectedWidthM: box.Width(), ProjectedHeightM: box.Height()}
	if s.Sizes == "skin" {
		if most := 2 * pi * radius; round > most {
			return flat, nil, fault("/skin_radius_m", "inconsistent", fmt.Sprintf("the figure is %s round and the body of skin_radius_m %s only %s; make the figure smaller or the radius greater", metres(round), metres(radius), metres(most)))
		}
		skin.setProjected(s.SkinAxis, projectedOf(round, radius))
		return flat, skin, nil
	}
	if most := 2 * radius * 0.999; round > most {
		return flat, nil, fault("/skin_radius_m", "inconsistent", fmt.Sprintf("the figure is %s across as seen from the side and the body of skin_radius_m %s shows %s at most; measure along the skin, or correct the radius", metres(round), metres(radius), metres(most)))
	}
	laid := a.OnCylinder(radius, s.SkinAxis == "upright")
	skin.WidthM, skin.HeightM = laid.Box.Width(), laid.Box.Height()
	return laid, skin, nil
}

package marking

// kinds lists every kind. The sizes of the examples are invented.
func kinds() []kind {
	return []kind{
		{
			"star", "a regular five-pointed star, one point up; the inner corners lie at 1/φ² = 0.382 of the radius", identity,
			func() Figure { return newStar() },
			func() Figure { f := newStar(); f.SizeM, f.Colour = 0.5, "white"; return f },
		},
		{
			"star_and_bar", "a white star in a blue circle with a white bar on each side, R long and R/2 high, a red stripe of R/6 in it, and a blue border of R/8 all round; R is half the size",
			sourceStarAndBar,
			func() Figure { return newStarAndBar() },
			func() Figure { f := newStarAndBar(); f.SizeM = 0.635; return f },
		},
		{
			"star_1919", "a white star on a blue disc with a red disc of 0.309 of the size in the middle", sourceStar1919,
			func() Figure { return newStar1919() },
			func() Figure { f := newStar1919(); f.SizeM = 0.6; return f },
		},
		{
			"disc_star", "a star on the disc through its points", identity,
			func() Figure { return newDiscStar() },
			func() Figure { f := newDiscStar(); f.SizeM = 0.75; return f },
		},
		{
			"roundel", "discs of one centre; each ring's diameter goes as its ratio, the last is the size", identity,
			func() Figure { return newRoundel() },
			func() Figure {
				f := newRoundel()
				f.SizeM, f.Rings = 0.4, []RoundelRing{{1, "orange"}, {2, "white"}, {3, "green"}}
				return f
			},
		},
		{
			"disc", "a filled circle", identity,
			func() Figure { return newDisc() },
			func() Figure { f := newDisc(); f.SizeM, f.Colour = 0.3, "orange"; return f },
		},
		{
			"ring", "a band between two circles, the base showing inside", identity,
			func() Figure { return newRing() },
			func() Figure { f := newRing(); f.SizeM, f.InnerSizeM, f.Colour = 0.3, 0.2, "orange"; return f },
		},
		{
			"cross", "two equal bars crossing upright, with flanks along the arms if wanted", identity,
			func() Figure { return newCross() },
			func() Figure {
				f := newCross()
				f.SizeM, f.ArmWidthM, f.FlankWidthM, f.Colour, f.FlankColour = 0.8, 0.2, 0.05, "green", "white"
				return f
			},
		},
		{
			"fin_flash", "a rectangle of vertical bands, their widths as their ratios", identity,
			func() Figure { return newFinFlash() },
			func() Figure {
				f := newFinFlash()
				f.WidthM, f.HeightM, f.Bands = 0.6, 0.6, []Band{{1, "orange"}, {1, "white"}, {1, "green"}}
				return f
			},
		},
		{
			"stripe", "a straight stripe, of one width or tapering to another", identity,
			func() Figure { return newStripe() },
			func() Figure {
				f, end := newStripe(), 0.05
				f.LengthM, f.WidthM, f.EndWidthM, f.Colour = 8, 0.25, &end, "green"
				return f
			},
		},
		{
			"chevron", "two arms meeting on an axis, their ends cut parallel to it", identity,
			func() Figure { return newChevron() },
			func() Figure {
				f := newChevron()
				f.WidthM, f.StripeWidthM, f.Colour = 0.5, 0.08, "red"
				return f
			},
		},
		{
			"hazard", "a panel of slanting stripes of two colours and equal width, the first dark one beginning in the lower left corner", "plane geometry; equal stripes at 45° as on the markers of the traffic control manual (MUTCD)",
			func() Figure { return newHazard() },
			func() Figure {
				f := newHazard()
				f.WidthM, f.HeightM, f.StripeWidthM = 1, 0.1, 0.05
				return f
			},
		},
		{
			"exit_band", "a band of one width round an opening, rounded with its corners", sourceExitBand,
			func() Figure { return newExitBand() },
			func() Figure {
				f := newExitBand()
				f.SizeM, f.OpeningWidthM, f.OpeningHeightM, f.CornerRadiusM, f.Colour = 0.0508, 0.508, 0.9144, 0.1778, "yellow"
				return f
			},
		},
		{
			"lettering", "a line of block letters on a grid 6 high and 4 wide, strokes 1 wide", sourceLettering,
			func() Figure { return newLettering() },
			func() Figure {
				f := newLettering()
				f.Text, f.HeightM, f.Colour = "AB-123", 0.3, "black"
				return f
			},
		},
		{
			"rectangle", "a rectangle, with rounded corners if wanted", identity,
			func() Figure { return newRectangle() },
			func() Figure {
				f := newRectangle()
				f.WidthM, f.HeightM, f.CornerRadiusM, f.Colour = 0.3, 0.12, 0.02, "yellow"
				return f
			},
		},
		{
			"polygon", "a free figure with straight sides", identity,
			func() Figure { return newPolygon() },
			func() Figure {
				f := newPolygon()
				f.Points, f.Colour = [][2]float64{{0, 0}, {0.6, 0}, {0.5, 0.2}, {0.1, 0.25}}, "red"
				return f
			},
		},
	}
}

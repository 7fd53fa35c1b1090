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
			"roundel", "discs of one centre; each ring's diameter goes as its ratio, the last is the size; free rings or a public set: 1-3-5, 1-3-5-7, 1-3-5-6, 2-5, 3-4-8, 1-2-3, 3-7-11", sourceRoundel,
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
			"stripe", "a stripe: straight with square or shaped ends, tapering, curved on a radius, or right round a body", identity,
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
			"chequer", "a panel of equal squares in two colours, the lower left corner dark", sourceChequer,
			func() Figure { return newChequer() },
			func() Figure { f := newChequer(); f.SquareM, f.Columns, f.Rows = 0.15, 5, 3; return f },
		},
		{
			"rudder_stripes", "an upright band over a third of the chord at the hinge and 13 level stripes behind it, all equal in height", sourceRudder,
			func() Figure { return newRudderStripes() },
			func() Figure { f := newRudderStripes(); f.ChordM, f.HeightM = 1, 1.3; return f },
		},
		{
			"flag", "a flag whose proportions a public rule fixes, free stripes, or a free cross on a field", sourceFlag,
			func() Figure { return newFlag() },
			func() Figure { f := newFlag(); f.Design, f.HoistM = "fi", 0.3; return f },
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
			"lettering", "text in block letters, by the registration rule on a grid 6 high and 4 wide with strokes of 1, or by another lettering rule; or in the letters of an open font", sourceLettering,
			func() Figure { return newLettering() },
			func() Figure {
				f := newLettering()
				f.Text, f.HeightM, f.Colour = "AB-123", 0.3, "black"
				return f
			},
		},
		{
			"stencil", "text with bridges above and below every island, in lines of one pitch, repeated if wanted", sourceStencil,
			func() Figure { return newStencilText() },
			func() Figure {
				f := newStencilText()
				f.Text, f.HeightM, f.BridgeWidthM, f.Colour = "NO STEP\nLIFT HERE", 0.025, 0.002, "red"
				return f
			},
		},
		{
			"outline", "a free figure drawn as SVG path data", identity,
			func() Figure { return newOutline() },
			func() Figure {
				f := newOutline()
				f.Path, f.Colour = "M0 0H300A60 60 0 0 1 300 120C200 160 100 80 0 120Z", "red"
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

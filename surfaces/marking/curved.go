package marking

// Curved says whether any edge of a figure is an arc or a curve: tape that goes
// round it has to stretch. A figure of many like parts, such as lettering from a
// font, counts as curved.
func Curved(f Figure) bool {
	layers := f.Layers()
	for _, l := range layers {
		for _, outline := range l.Outline {
			for _, corner := range outline {
				if corner.Sweep != 0 || corner.Bend != nil {
					return true
				}
			}
		}
	}
	return len(layers) == 0
}

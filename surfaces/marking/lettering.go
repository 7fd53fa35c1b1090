package marking

import (
	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceLettering = "14 CFR 45.29 unless another rule is chosen: two-thirds as wide as high, 1 and I one-sixth, M and W up to full height, strokes one-sixth, gaps one-fourth of the width; the construction of each letter is ours. Other rules: 33 CFR 183.25 and 173.27, UK road plates of 2001, ISO 3098 type B, DOD-HDBK-791, DIN 1451"

// Lettering is a text in one colour, whole letters: what is cut from film loses
// its islands, which islands counts.
type Lettering struct {
	Setting
	Shared
}

func newLettering() *Lettering {
	return &Lettering{Setting: usualSetting(), Shared: usualShared()}
}

// Kind implements Figure.
func (*Lettering) Kind() string { return "lettering" }

// Check implements Figure.
func (f *Lettering) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	f.Setting.check(report)
}

// Layers implements Figure.
func (f *Lettering) Layers() []planar.Layer { return spread(f.blocks()) }

func (f *Lettering) blocks() []block {
	places, _ := f.set()
	return letterBlocks(places, f.HeightM, func(_ rune, outline planar.Region) []planar.Layer {
		return []planar.Layer{{Colour: f.Colour, Outline: outline}}
	})
}

func (f *Lettering) dimensions() []quantity.Working { return f.settingDimensions() }

package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

func paragraph(t require.TestingT, letters int) *marking.Lettering {
	f, found := marking.New("lettering")
	require.True(t, found)
	text := f.(*marking.Lettering)
	text.HeightM, text.Colour = 0.025, "black"
	text.Text = strings.Repeat("DANGER KEEP OFF 8 BARS 0 TO 96\n", letters/31)
	return text
}

func BenchmarkFigureOf2000Letters(b *testing.B) {
	f := paragraph(b, 2000)
	for b.Loop() {
		_, err := Figure(f, Look{})
		require.NoError(b, err)
	}
}

func BenchmarkCutOf2000Letters(b *testing.B) {
	f := paragraph(b, 2000)
	for b.Loop() {
		_, err := Cut(f, Look{})
		require.NoError(b, err)
	}
}

func BenchmarkFigureOfStarAndBar(b *testing.B) {
	f, _ := marking.New("star_and_bar")
	f.(*marking.StarAndBar).SizeM = 0.635
	for b.Loop() {
		_, err := Figure(f, Look{})
		require.NoError(b, err)
	}
}

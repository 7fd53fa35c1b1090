package marking

import (
	"encoding/binary"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzMeasure fills a figure of any kind with numbers from the bytes, some of
// them not finite: what passes Check must be measured, without a panic, a NaN
// or a negative number.
func FuzzMeasure(f *testing.F) {
	for kind := range Kinds() {
		f.Add(uint8(kind), []byte("\x00\x10\x20\x30\x40\x50\x60\x70\x80\x90\xa0\xb0\xc0\xd0\xe0\xf0 some more numbers for the lists"))
		f.Add(uint8(kind), []byte{0x40, 0x40, 0x40, 0x40, 0x40, 0x40, 0x40, 0x40, 0xff, 0xf7, 0, 1})
	}
	f.Fuzz(func(t *testing.T, kind uint8, data []byte) {
		all := Kinds()
		figure, _ := New(all[int(kind)%len(all)].Name)
		fill(figure, func() float64 {
			if len(data) < 2 {
				return 0.3
			}
			n := binary.BigEndian.Uint16(data)
			data = data[2:]
			switch n {
			case 0xfff7:
				return math.NaN()
			case 0xfff8:
				return math.Inf(1)
			}
			return float64(n) / 0x10000
		})
		if len(faultsOf(figure)) > 0 {
			return
		}
		m, err := Measure(figure)
		require.NoError(t, err)
		for _, x := range []float64{m.AreaM2, m.OutlineM, m.EdgeOnceM, m.EdgeTwoSidedM, m.WidthM, m.HeightM, m.StencilFilmM2} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0) || x <= 0, "%+v", m)
		}
	})
}

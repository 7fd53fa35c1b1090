package mesh

import (
	"encoding/binary"
	"io"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func drawRecords(t *rapid.T) []byte {
	number := rapid.OneOf(rapid.Float32Range(-1e3, 1e3), rapid.Float32Range(-1e11, 1e11), rapid.SampledFrom([]float32{0, 1, float32(math.Copysign(0, -1)), 1e-38}))
	data := make([]byte, stlRecord*rapid.IntRange(1, 41).Draw(t, "records"))
	for i := 0; i < len(data); i += stlRecord {
		for k := range 12 {
			binary.LittleEndian.PutUint32(data[i+4*k:], math.Float32bits(number.Draw(t, "number")))
		}
	}
	return data
}

// What the wide registers come to is what one record after the other comes to,
// to the last bit.
func TestFourSideBySideAreFourOneByOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		data := drawRecords(t)
		origin := stlCorner(data[12:])
		fast, slow := newLanes(origin), newLanes(origin)
		assert.True(t, fast.sum(data))
		for i := range laneCount {
			slow.add(data, i)
		}
		for k := range 3 { // −0 and 0 are one place
			for i := range laneCount {
				assert.Equal(t, slow.low[k][i]+0, fast.low[k][i]+0)
				assert.Equal(t, slow.high[k][i]+0, fast.high[k][i]+0)
			}
		}
		fast.low, fast.high = slow.low, slow.high
		assert.Equal(t, slow, fast)
	})
}

// One number of any corner that is none, or is too large, is found.
func TestEveryCoordinateOfALaneIsLookedAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		data := drawRecords(t)
		record := rapid.IntRange(0, len(data)/stlRecord-1).Draw(t, "record")
		number := rapid.IntRange(3, 11).Draw(t, "coordinate")
		bad := rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 1.01e12, -1.01e12}).Draw(t, "bad")
		binary.LittleEndian.PutUint32(data[record*stlRecord+4*number:], math.Float32bits(float32(bad)))
		assert.False(t, newLanes(stlCorner(data[12:])).sum(data))
	})
}

// BenchmarkLanes measures one piece over and over, out of the processor's cache.
func BenchmarkLanes(b *testing.B) {
	data := make([]byte, blockRecords*stlRecord)
	_, err := io.ReadFull(newHeights(blockRecords+2), data)
	require.NoError(b, err)
	data = data[stlHeader : stlHeader+(blockRecords-2)*stlRecord]
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if l := newLanes(Point{}); !l.sum(data) {
			b.Fatal("refused")
		}
	}
}

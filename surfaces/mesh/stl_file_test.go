package mesh

import (
	"bytes"
	"context"
	"encoding/binary"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manyFacets is a binary STL of several pieces and a bit, of invented facets.
func manyFacets() []byte {
	random := rand.New(rand.NewPCG(1, 2))
	count := 5*blockRecords + 7
	data := make([]byte, stlHeader+stlRecord*count)
	binary.LittleEndian.PutUint32(data[80:], uint32(count))
	for i := range count {
		for k := range 9 {
			binary.LittleEndian.PutUint32(data[stlHeader+stlRecord*i+12+4*k:], math.Float32bits(float32(random.NormFloat64())))
		}
	}
	return data
}

// measureBoth measures bytes as a stream and as a file behind some other bytes.
func measureBoth(t *testing.T, data []byte) (stream, file Result, streamErr, fileErr error) {
	t.Helper()
	o := DefaultOptions("m")
	o.CheckFacets = 0
	stream, streamErr = Measure(context.Background(), bytes.NewReader(data), o)
	path := filepath.Join(t.TempDir(), "part.stl")
	require.NoError(t, os.WriteFile(path, append([]byte("before"), data...), 0o600))
	f, err := os.Open(path)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, f.Close()) })
	_, err = f.Seek(6, io.SeekStart)
	require.NoError(t, err)
	file, fileErr = Measure(context.Background(), f, o)
	return stream, file, streamErr, fileErr
}

// However many readers share a file, the sums are those of one, to the last bit.
func TestAFileIsMeasuredAsAStreamIs(t *testing.T) {
	stream, file, err1, err2 := measureBoth(t, manyFacets())
	require.NoError(t, err1)
	require.NoError(t, err2)
	assert.Equal(t, stream, file)
	assert.EqualValues(t, 5*blockRecords+7, file.Facets)
}

func TestAFileHasTheFaultsOfAStream(t *testing.T) {
	spoil := func(piece int, value float64) []byte {
		data := manyFacets()
		binary.LittleEndian.PutUint32(data[stlHeader+stlRecord*(piece*blockRecords+5)+40:], math.Float32bits(float32(value)))
		return data
	}
	good := manyFacets()
	for name, c := range map[string]struct {
		data []byte
		code string
	}{
		"not a number": {spoil(3, math.NaN()), "not_a_number"},
		"infinite":     {spoil(0, math.Inf(1)), "not_a_number"},
		"too large":    {spoil(5, 2e12), "out_of_range"},
		"cut off":      {good[:len(good)-stlRecord*(blockRecords+9)-3], "truncated"},
		"no facets":    {good[:stlHeader], "truncated"},
		"goes on":      {append(good[:len(good):len(good)], 0), "count_mismatch"},
	} {
		_, _, streamErr, fileErr := measureBoth(t, c.data)
		var want, got *FileError
		require.ErrorAs(t, streamErr, &want, name)
		require.ErrorAs(t, fileErr, &got, name)
		assert.Equal(t, want, got, name)
		assert.Equal(t, c.code, got.Code, name)
	}
}

func TestReadersOfAFileStopWithTheContext(t *testing.T) {
	path := filepath.Join(t.TempDir(), "part.stl")
	require.NoError(t, os.WriteFile(path, manyFacets(), 0o600))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	o := DefaultOptions("m")
	o.CheckFacets = 0
	_, err := MeasureFile(ctx, path, o)
	assert.ErrorIs(t, err, context.Canceled)
}

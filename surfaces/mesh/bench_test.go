package mesh

import (
	"bufio"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// BenchmarkTenMillionFacets reads a binary STL of ten million facets alone and
// measures it, in turn, and reports the best speed of each and their ratio. "disk" lets
// the system forget the file before each pass, as when a file is first opened;
// "memory" reads it out of the system's cache, where reading is a mere copy.
//
// The ratio on disk has to be at least 0.5. The one from memory is so on two
// processors or more that have nothing else to do.
func BenchmarkTenMillionFacets(b *testing.B) {
	const facets = 10_000_000
	path := filepath.Join(b.TempDir(), "field.stl")
	writeSTL(b, path, facets)
	for _, from := range []string{"disk", "memory"} {
		b.Run(from, func(b *testing.B) {
			b.ReportAllocs()
			reading, measuring := time.Hour, time.Hour
			timed(b, path, from, readAlone) // neither is to be the first
			for b.Loop() {
				reading = min(reading, timed(b, path, from, readAlone))
				measuring = min(measuring, timed(b, path, from, func(file *os.File) error {
					_, err := Measure(context.Background(), file, DefaultOptions("m"))
					return err
				}))
			}
			megabytes := float64(stlHeader+stlRecord*facets) / 1e6
			ratio := reading.Seconds() / measuring.Seconds()
			b.ReportMetric(megabytes/reading.Seconds(), "MB/s-reading")
			b.ReportMetric(megabytes/measuring.Seconds(), "MB/s-measuring")
			b.ReportMetric(ratio, "ratio")
			b.Logf("%s: reading %.0f MB/s, measuring %.0f MB/s", from, megabytes/reading.Seconds(), megabytes/measuring.Seconds())
			if from == "disk" && ratio < 0.5 {
				b.Errorf("measuring has %.2f of the speed of reading from %s; at least 0.5 is promised", ratio, from)
			}
		})
	}
}

func timed(b *testing.B, path, from string, work func(*os.File) error) time.Duration {
	file, err := os.Open(path)
	require.NoError(b, err)
	defer file.Close()
	if from == "disk" {
		require.NoError(b, forget(file))
	}
	start := time.Now()
	require.NoError(b, work(file))
	return time.Since(start)
}

func readAlone(file *os.File) error {
	buffer := make([]byte, bufferBytes)
	for {
		if _, err := file.Read(buffer); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

func writeSTL(b *testing.B, path string, facets int) {
	file, err := os.Create(path)
	require.NoError(b, err)
	w := bufio.NewWriterSize(file, 1<<20)
	_, err = io.Copy(w, newHeights(facets))
	require.NoError(b, err)
	require.NoError(b, w.Flush())
	require.NoError(b, file.Sync())
	require.NoError(b, file.Close())
}

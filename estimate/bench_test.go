package estimate_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/tests/load/plain"
)

// What one estimate of example (a) costs, beside what encoding/json takes to
// decode its document into plain structs and to encode its estimate. The limit
// for Run, and the aim for ReadAndRun, is three times DecodeAndEncode.
func BenchmarkEstimate(b *testing.B) {
	document, err := example.Find("jet-trainer")
	require.NoError(b, err)
	catalogue, err := products.Load()
	require.NoError(b, err)
	reader := estimate.NewReader(nil)
	job, err := reader.Job(document.Job, &fault.List{})
	require.NoError(b, err)
	answer, err := estimate.Run(job, catalogue)
	require.NoError(b, err)

	b.Run("Run", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := estimate.Run(job, catalogue); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("ReadAndRun", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := reader.Estimate(document.Job, catalogue); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("DecodeAndEncode", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var mirror plain.Job
			if err := json.Unmarshal(document.Job, &mirror); err != nil {
				b.Fatal(err)
			}
			if _, err := json.Marshal(answer); err != nil {
				b.Fatal(err)
			}
		}
	})
}

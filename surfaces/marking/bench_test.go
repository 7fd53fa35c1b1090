package marking

import "testing"

func BenchmarkStarAndBar(b *testing.B) {
	f := newStarAndBar()
	f.SizeM = 1
	for b.Loop() {
		if _, err := Measure(f); err != nil {
			b.Fatal(err)
		}
	}
}

package marking

import "testing"

func BenchmarkStarAndBar(b *testing.B) {
	f := newStarAndBar()
	f.SizeM = 1
	measureOften(b, f)
}

// BenchmarkTrainer measures the markings of the example jet-trainer: two
// roundels, a stripe that tapers and a walkway.
func BenchmarkTrainer(b *testing.B) {
	rings := []RoundelRing{{1, "orange"}, {2, "white"}, {3, "green"}}
	wing, side := newRoundel(), newRoundel()
	wing.SizeM, wing.Rings = 0.762, rings
	side.SizeM, side.Rings = 0.508, rings
	stripe := newStripe()
	end := 0.08
	stripe.LengthM, stripe.WidthM, stripe.EndWidthM, stripe.Colour = 5.6, 0.22, &end, "green"
	walkway := newRectangle()
	walkway.WidthM, walkway.HeightM, walkway.Colour = 0.5, 1.4, "black"
	measureOften(b, wing, side, stripe, walkway)
}

func measureOften(b *testing.B, figures ...Figure) {
	b.ReportAllocs()
	for b.Loop() {
		for _, f := range figures {
			if _, err := Measure(f); err != nil {
				b.Fatal(err)
			}
		}
	}
}

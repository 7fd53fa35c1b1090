package film_test

import (
	"fmt"

	"filmbuild/estimate/film"
)

func ExampleTheoreticalSpreadingRate() {
	// Unattributed spreading-rate note, its metric example [coating E6].
	rate, _ := film.TheoreticalSpreadingRate(0.65, 125)
	fmt.Printf("%.1f m²/L\n", rate)
	// Output:
	// 5.2 m²/L
}

func ExampleWetFilm() {
	// Coating-school slide deck [coating E14].
	wet, _ := film.WetFilm(100, 0.65, 0)
	fmt.Printf("%.0f µm\n", wet)
	// Output:
	// 154 µm
}

func ExamplePaint() {
	// Coating-school slide deck, a tank of 500 m² without losses [coating E16];
	// it prints 117.7 and 50.0.
	first, _ := film.Paint(500, 200, 0.85, 1, 0)
	second, _ := film.Paint(500, 50, 0.5, 1, 0)
	fmt.Printf("%.1f L, %.1f L\n", first, second)
	// Output:
	// 117.6 L, 50.0 L
}

func ExampleMeanFactor() {
	// Table of reference coating 7, row 0.20: 1.20 and 1.34 (mathematics).
	at80, _ := film.MeanFactor(film.Min80Of20, 0.2)
	at90, _ := film.MeanFactor(film.Min90Of10, 0.2)
	fmt.Printf("%.2f %.2f\n", at80, at90)
	// Output:
	// 1.20 1.34
}

func ExampleCoating_Calculate() {
	// Invented: 10 m² of wing, two coats of 50 µm by spray.
	c := film.NewCoating()
	c.AreaM2, c.Coats, c.DryFilmUm, c.VolumeSolidsPercent = 10, 2, 50, 50
	c.TransferEfficiencyPercent, c.LossPercent, c.ThinnerPercent = 50, 20, 10
	r, _ := c.Calculate()
	fmt.Printf("%.2f L of paint and %.2f L of thinner, %.0f µm wet\n", r.PaintL, r.ThinnerL, r.WetFilmUm)
	// Output:
	// 5.00 L of paint and 0.50 L of thinner, 110 µm wet
}

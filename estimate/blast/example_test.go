package blast_test

import (
	"fmt"

	"filmbuild/estimate/blast"
)

const (
	psi = 6.894757293  // kPa
	cfm = 0.0283168466 // m³/min
	lb  = 0.45359237   // kg
)

func ExampleFreeAir() {
	// Ideal flow through a 1/4 in nozzle at 100 psi [blasting A-10].
	air, _ := blast.FreeAir(6.35, 100*psi, blast.SeaLevelKPa, 1)
	fmt.Printf("%.1f cfm = %.3f m³/min\n", air/cfm, air)
	// Output:
	// 104.0 cfm = 2.946 m³/min
}

func ExampleUses() {
	// OSHA silica eTool: 10 % breakdown, ten reuses [blasting C-1, D-1].
	uses, _ := blast.Uses(0.1)
	fmt.Println(uses)
	// Output:
	// 10
}

func ExampleBlasting_Calculate() {
	// OSHA silica eTool, "Economics of aluminum oxide as a silica substitute"
	// [blasting C-1, C-3]: 2000 lb/h, 285 ft²/h, 10 % breakdown, one hour.
	b := blast.NewBlasting()
	b.NozzleBoreMm, b.PressureKPa = 12.7, 100*psi
	b.AreaM2, b.StripRateM2H = new(285*0.09290304), new(285*0.09290304)
	b.MediaFlowKgH, b.BreakdownPercent, b.Recovered = new(2000*lb), new(10.0), true
	r, _ := b.Calculate()
	fmt.Printf("%.0f lb used in %.0f h; %.2f kg/m² thrown\n", *r.MediaUsedKg/lb, *r.Hours, *r.MediaThrownKgM2)
	// Output:
	// 200 lb used in 1 h; 34.26 kg/m² thrown
}

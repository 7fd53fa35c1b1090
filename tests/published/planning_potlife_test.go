package published

import (
	"math"
	"testing"

	"filmbuild/estimate/climate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// byMagnus is the dew point by another set of coefficients, written out here so
// that ours is not tested by itself.
func byMagnus(air, percent float64, set [2]float64) float64 {
	g := math.Log(percent/100) + set[0]*air/(set[1]+air)
	return set[1] * g / (set[0] - g)
}

func TestPotLives(t *testing.T) {
	const guide, trade = "UFGS 09971 3.7.1.3", "trade questions and answers on epoxy"
	life := func(known, at, temperature float64) float64 {
		return found(climate.HalvedPotLife(known, at, temperature))
	}
	checkFigures(t, []figure{
		{"C01 warmer", "A", guide, 0.5, 0, life(1, 21, 31)},
		{"C01 colder", "A", guide, 2, 0, life(1, 21, 11)},
		{"C02 epoxy", "A", guide, 4, 0, life(4, 21, 21)},
		{"C03 epoxy at 11 °C", "D", guide, 8, 0, life(4, 21, 11)},
		{"C03 epoxy at 31 °C", "D", guide, 2, 0, life(4, 21, 31)},
		{"C03 polyurethane at 31 °C", "D", guide, 1, 0, life(2, 21, 31)},
		{"K1 at 13 °C", "T2", trade, 8, 0, life(4, 23, 13)},
		{"K1 at 33 °C", "T2", trade, 2, 0, life(4, 23, 33)},
		{"K1 at 43 °C", "T2", trade, 1, 0, life(4, 23, 43)},
		{"C06 rate at 5 °C", "D", "2^((T−20)/10)", 0.354, 0.002, 1 / life(1, 20, 5)},
		{"C06 rate at 10 °C", "D", "2^((T−20)/10)", 0.500, 0.002, 1 / life(1, 20, 10)},
		{"C06 rate at 30 °C", "D", "2^((T−20)/10)", 2.000, 0.002, 1 / life(1, 20, 30)},
		{"C06 rate at 40 °C", "D", "2^((T−20)/10)", 4.000, 0.002, 1 / life(1, 20, 40)},
	})
}

// C05: the Arrhenius energy that the rule of 10 °C is worth.
func TestEnergyOfTheRule(t *testing.T) {
	const gas = 8.314462618e-3 // kJ/(mol K). Source: definition
	energy := func(cold, warm float64) float64 {
		ratio := found(climate.HalvedPotLife(1, 20, cold)) / found(climate.HalvedPotLife(1, 20, warm))
		return gas * math.Log(ratio) / (1/(cold+273.15) - 1/(warm+273.15))
	}
	checkFigures(t, []figure{
		{"C05 10 to 20 °C", "D", "Arrhenius", 47.8, 0.2, energy(10, 20)},
		{"C05 20 to 30 °C", "D", "Arrhenius", 51.2, 0.2, energy(20, 30)},
		{"C05 30 to 40 °C", "D", "Arrhenius", 54.7, 0.2, energy(30, 40)},
	})
}

// C15, S17: mix no more than is used in 4 hours. C17, K6: this Navy epoxy has a
// pot life of about 6 hours at 73 °F.
func TestBatchOfFourHours(t *testing.T) {
	p := climate.NewPotLife()
	p.PotLifeH, p.AtC, p.TemperatureC, p.SprayRateLH = 6, celsius(73), new(celsius(73)), new(1.5)
	r, err := p.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 6, r.PotLifeH, 1e-12, "C17, NAVFAC MO-124 [A]")
	assert.Equal(t, 4.0, r.BatchH, "C15, TO 1-1-8 6.12.6.3 [A]")
	assert.InDelta(t, 6, *r.BatchL, 1e-12, "C15 at 1.5 L/h")
}

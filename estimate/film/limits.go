package film

import "filmbuild/surfaces/quantity"

// The ranges in which the formulas of this package are used. They are wider
// than any paint and narrower than nonsense, so that a slipped decimal point or
// a fraction given for a percentage is refused and every result is finite
// (common practice).
var (
	areaLimits       = quantity.Limits{High: 100000, LowOpen: true}  // m²; a great ship's hull has about 50,000
	filmLimits       = quantity.Limits{Low: 0.1, High: 5000}         // µm dry, one coat: conversion film to sprayed lining
	totalFilmLimits  = quantity.Limits{Low: 0.01, High: 1e6}         // µm dry, all coats with the profile
	wetFilmLimits    = quantity.Limits{Low: 0.1, High: 1e7}          // µm
	solidsLimits     = quantity.Limits{Low: 0.01, High: 1}           // wash primers have about 0.08
	efficiencyLimits = quantity.Limits{Low: 0.01, High: 1}           // 0.05 was seen on small parts [coating T9]
	lossLimits       = quantity.Limits{High: 0.95}                   // of what was mixed
	thinnerLimits    = quantity.Limits{High: 3}                      // per volume of unthinned paint
	profileLimits    = quantity.Limits{High: 500}                    // µm; pitted steel reaches 300 [coating P7]
	fillLimits       = quantity.Limits{High: 1}                      // of the profile's depth
	densityLimits    = quantity.Limits{Low: 0.5, High: 10}           // kg/L; zinc-rich films reach about 5
	covLimits        = quantity.Limits{High: 1}                      // of the readings
	boreLimits       = quantity.Limits{High: 100, LowOpen: true}     // mm
	hoseLimits       = quantity.Limits{High: 1000, LowOpen: true}    // m
	rateLimits       = quantity.Limits{High: 100000, LowOpen: true}  // m²/L
	factorLimits     = quantity.Limits{Low: 1, High: mostFilmFactor} // mean over nominal film
	passLimits       = quantity.Limits{Low: 1, High: 5000}           // µm wet
	batchesLimits    = quantity.Limits{High: 5e6}                    // of all coats
	batchLossLimits  = quantity.Limits{High: 1000}                   // L; a hose of 1 km and 35 mm
	weightLimits     = quantity.Limits{Low: 0.01, High: 1}           // weight solids
)

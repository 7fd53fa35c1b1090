// Package risk draws uncertain numbers and gathers what comes of them: the
// Monte Carlo behind the ranges of an estimate.
//
// It knows no paint and no money. An Input has a key, by which its draws are
// told apart and found again: the scores of an input depend on the seed, the
// key and the number of the trial, and on nothing else. So two jobs that share
// an input share its draws, and results are the same bytes for any number of
// processors.
//
// Draws are made by inversion: a standard normal score z is drawn first, and
// the input is the value that its distribution holds back with the probability
// of z. Inputs of one group share their score (they are fully correlated);
// groups may be correlated by a matrix: their scores are, so that the values
// have the correlation asked for (a Gaussian copula).
package risk

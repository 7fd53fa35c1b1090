// Package compare sets ways of doing a job side by side: a base job and named
// variants of it, each a patch of what is done otherwise.
//
// All are worked out with the same draws: an input that two of them share, such
// as the area of a wing or the transfer efficiency of a spray gun, has the same
// value in the same trial of both. So the difference between two ways is that of
// the ways, and not of luck.
package compare

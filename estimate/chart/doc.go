// Package chart draws the range of a figure as SVG: how often each value came
// out, how likely each is to hold, and where the single figure stands.
//
// A drawing carries its title and a description in words, and follows the
// reader's light or dark setting. The package draws numbers and knows no job.
package chart

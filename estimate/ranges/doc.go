// Package ranges works out how far the figures of an estimate may lie from the
// single ones: it draws every uncertain input many times and follows each trial
// through the graph of the estimate, whole packs and rounding included.
package ranges

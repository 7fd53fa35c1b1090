// Package money holds amounts of money as decimals and is the only place where
// a quantity becomes money.
//
// # Rounding
//
// An amount always has exactly the minor units of its currency: two places for
// USD, none for JPY, three for KWD. What has more is rounded once, in decimal,
// half away from zero: 1.005 USD is 1.01 and -1.005 is -1.01. [Currency.Cost] and
// [Currency.CostFromPack] round each line; a total is the sum of its rounded
// lines, so that what is printed adds up. A float64 enters as the shortest decimal
// text that reads back as the same float64, which is the number a person sees:
// 1.005 is 1.005 and not 1.00499999999999989. What such a quantity misses a half by
// in its last bits counts as the half.
//
// # One currency
//
// A document names its currency once. An Amount carries the minor units and not
// the code; nothing here converts between currencies.
package money

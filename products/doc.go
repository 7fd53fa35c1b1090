// Package products is the catalogue: paints, thinners, liquids, abrasives,
// tapes, films, discs and sundries with their packs and prices, the methods
// that apply paint, the rates of other work, and the source of every value.
//
// The data are CSV files embedded in the program. Load reads them strictly: an
// unknown column, a value out of range, a reference that leads nowhere or a
// value without a source is a fault with its file and line, and no catalogue
// comes out. Physical limits and abrasive data come from published sources and
// carry the confidence mark of each; paint properties and all prices are
// invented, typical, and say so.
//
// Cover finds the cheapest way to buy a need in whole packs.
//
// Numbers are float64 in the unit that ends their wire name (pack_l, dry_film_um);
// money is decimal, in the catalogue's currency.
package products

package products

// Item is a sundry bought by the piece: cups, cloths, gloves.
type Item struct {
	Common
}

// Check reports every fault in the item.
func (i *Item) Check(report func(pointer, code, detail string)) { check(i, report) }

package products

// Kinds lists the kinds of product.
func Kinds() []string {
	return []string{"paint", "thinner", "liquid", "media", "tape", "film", "disc", "item"}
}

// New returns an empty product of a kind, a pointer to its struct with kind
// set, and false for an unknown kind.
func New(kind string) (Product, bool) {
	common := Common{Kind: kind}
	switch kind {
	case "paint":
		return &Paint{Common: common}, true
	case "thinner":
		return &Thinner{Common: common}, true
	case "liquid":
		return &Liquid{Common: common}, true
	case "media":
		return &Media{Common: common}, true
	case "tape":
		return &Tape{Common: common}, true
	case "film":
		return &Film{Common: common}, true
	case "disc":
		return &Disc{Common: common}, true
	case "item":
		return &Item{Common: common}, true
	}
	return nil, false
}

// packForm is how the packs of a kind are measured.
type packForm struct{ unit, field string }

func packOf(kind string) packForm {
	switch kind {
	case "paint", "thinner", "liquid":
		return packForm{"L", "pack_l"}
	case "media":
		return packForm{"kg", "pack_kg"}
	case "tape", "film":
		return packForm{"m", "pack_m"}
	case "disc", "item":
		return packForm{"pcs", "pack_count"}
	}
	return packForm{}
}

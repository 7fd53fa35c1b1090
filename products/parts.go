package products

import (
	"fmt"
	"slices"
	"strings"
)

// Parts lists the parts of a mix in the order in which they go together, with
// their shares of the mixed, unthinned paint.
func (m *Mix) Parts() []MixShare {
	if m == nil {
		return nil
	}
	parts := []MixShare{{"base", m.Base}, {"hardener", m.Hardener}}
	if m.Activator != nil {
		parts = append(parts, MixShare{"activator", *m.Activator})
	}
	return parts
}

// MixShare is one part of a mix by volume.
type MixShare struct {
	Part  string
	Ratio float64
}

// PartNames lists what a pack of a mixed paint may hold when it is sold apart.
func PartNames() []string { return []string{"base", "hardener", "activator"} }

// SoldApart reports whether the parts of the paint are bought in packs of their
// own, so that each is ordered by its share of the mix.
func (p *Paint) SoldApart() bool {
	return slices.ContainsFunc(p.Packs, func(pack Pack) bool { return pack.Part != "" })
}

// OffersOf returns the packs of one part, of all packs where part is empty.
func (c *Common) OffersOf(part string) []PackOffer {
	var offers []PackOffer
	for _, pack := range c.Packs {
		if pack.Part == part {
			offers = append(offers, PackOffer{Pack: pack.Size(), Price: pack.Price.value()})
		}
	}
	return offers
}

// checkParts reports packs of parts that the paint does not have, kits beside
// parts, and parts that cannot be bought.
func (p *Paint) checkParts(report func(pointer, code, detail string)) {
	if !p.SoldApart() {
		return
	}
	names := make([]string, 0, 3)
	for _, part := range p.Mix.Parts() {
		names = append(names, part.Part)
	}
	if len(names) == 0 {
		report("/mix", "required", "mix is missing; packs of base and hardener apart are ordered by it")
		return
	}
	for i, pack := range p.Packs {
		if !slices.Contains(names, pack.Part) {
			report(fmt.Sprintf("/packs/%d/part", i), "inconsistent", fmt.Sprintf("part is %q; where packs are sold by part each must name one of %s", clip(pack.Part), strings.Join(names, ", ")))
		}
	}
	for _, name := range names {
		if len(p.OffersOf(name)) == 0 {
			report("/packs", "required", "packs has none of the "+name+"; where parts are sold apart each part needs one")
		}
	}
}

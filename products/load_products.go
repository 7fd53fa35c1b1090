package products

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

func (l *loader) products() {
	for _, kind := range Kinds() {
		file := kind + "s.csv"
		if kind == "media" {
			file = "media.csv"
		}
		for _, r := range l.rows(file) {
			p, _ := New(kind)
			l.product(p, r)
		}
	}
}

// product fills one product from its record and adds it.
func (l *loader) product(p Product, r row) {
	key := id(r, "id")
	r.required("name")
	origin := l.provenance(r)
	target := reflect.ValueOf(p).Elem()
	for i, column := range r.columns {
		if slices.Contains([]string{"source", "page", "ref", "mark"}, column) {
			continue // together they become the one text of the field source
		}
		if err := fill(target, column, r.cells[i]); err != nil {
			r.fault(column, "%s", err)
		}
	}
	p.Base().Source = origin.Text()
	if key != "" && once(l.lines, key, r, "id", "product") {
		l.c.products = append(l.c.products, p)
		l.c.byID[key] = p
	}
}

func (l *loader) packs() {
	seen := map[string]row{}
	for _, r := range append(l.rows("packs.csv"), l.rows("part_packs.csv")...) {
		key := r.required("product")
		origin := l.provenance(r)
		size, _ := r.number("size")
		pack := Pack{Part: r.text("part"), Price: price(r), Source: origin.Text()}
		p, ok := l.c.byID[key]
		if !ok {
			r.fault("product", "there is no product %q", clip(key))
			continue
		}
		once(seen, strings.TrimSpace(key+" "+pack.Part)+" "+r.text("size"), r, "size", "pack")
		common := p.Base()
		if unit := r.text("unit"); unit != common.Unit() {
			r.fault("unit", "is %q; %s is bought in %s", clip(unit), key, common.Unit())
			continue
		}
		switch packOf(common.Kind).field {
		case "pack_l":
			pack.PackL = &size
		case "pack_kg":
			pack.PackKg = &size
		case "pack_m":
			pack.PackM = &size
		case "pack_count":
			pack.PackCount = &size
		}
		common.Packs = append(common.Packs, pack)
		l.packLines[key] = append(l.packLines[key], r)
	}
}

// price reads an amount with exactly two decimal places, as the catalogue's
// currency has; an empty cell is no price.
func price(r row) *Price {
	text := r.text("price")
	if text == "" {
		return nil
	}
	_, places, _ := strings.Cut(text, ".")
	amount, err := decimal.NewFromString(text)
	if _, plain := plainNumber(text); err != nil || plain != nil || len(places) != 2 {
		r.fault("price", "%q is no amount with two decimal places such as 12.50", clip(text))
		return nil
	}
	return &Price{amount}
}

// check reports what the products themselves find wrong, at the line of the
// product or of the pack, and thinners that do not exist.
func (l *loader) check() {
	for _, p := range l.c.products {
		r, common := l.lines[p.Base().ID], p.Base()
		p.Check(func(pointer, _, detail string) {
			at, column := r, strings.TrimPrefix(pointer, "/")
			if i, field, ok := packPointer(pointer); ok {
				at, column = l.packLines[common.ID][i], "size"
				if field == "price" || field == "part" {
					column = field
				}
			}
			at.fault(column, "%s", detail)
		})
		if len(common.Packs) == 0 && len(l.data["packs.csv"]) > 0 {
			r.fault("id", "%q has no pack in packs.csv", common.ID)
		}
		if paint, ok := p.(*Paint); ok && paint.Thinner != "" {
			if _, ok := l.c.byID[paint.Thinner].(*Thinner); !ok {
				r.fault("thinner", "there is no thinner %q", clip(paint.Thinner))
			}
		}
	}
}

// packPointer takes /packs/2/price apart.
func packPointer(pointer string) (index int, field string, ok bool) {
	rest, found := strings.CutPrefix(pointer, "/packs/")
	if !found {
		return 0, "", false
	}
	number, field, _ := strings.Cut(rest, "/")
	index, err := strconv.Atoi(number)
	return index, field, err == nil
}

package products

import (
	"maps"
	"slices"
)

func methodQuantities() []string {
	return []string{"transfer_efficiency_percent", "rate_m2_h", "pass_wet_film_um", "cleaning_l"}
}

// value returns the field of one of methodQuantities.
func (m *Method) value(quantity string) *Value {
	switch quantity {
	case "rate_m2_h":
		return &m.RateM2H
	case "pass_wet_film_um":
		return &m.PassWetFilmUM
	case "cleaning_l":
		return &m.CleaningL
	}
	return &m.TransferEfficiencyPercent
}

func (l *loader) methods() {
	seen, filled := map[string]row{}, map[string]row{}
	for _, r := range l.rows("methods.csv") {
		m := Method{ID: id(r, "id"), Name: r.required("name"), Note: r.text("note")}
		if once(seen, m.ID, r, "id", "method") {
			l.c.methods = append(l.c.methods, m)
		}
	}
	for _, r := range l.rows("method_values.csv") {
		v, ok := l.value(r, methodQuantities()...)
		key := r.required("method")
		i := slices.IndexFunc(l.c.methods, func(m Method) bool { return m.ID == key })
		if i < 0 {
			r.fault("method", "there is no method %q", clip(key))
		}
		if i < 0 || !ok || !once(filled, key+" "+v.Quantity, r, "quantity", "value") {
			continue
		}
		*l.c.methods[i].value(v.Quantity) = v
	}
	for _, key := range slices.Sorted(maps.Keys(seen)) {
		for _, quantity := range methodQuantities() {
			if _, ok := filled[key+" "+quantity]; !ok {
				seen[key].fault("id", "%q has no usable %s in method_values.csv", clip(key), quantity)
			}
		}
	}
}

// partSizes reads the classes of part and what they make of the transfer
// efficiency of each method.
func (l *loader) partSizes() {
	seen, filled := map[string]row{}, map[string]row{}
	for _, r := range l.rows("part_sizes.csv") {
		p := PartSize{ID: id(r, "id"), Name: r.required("name"), Note: r.text("note")}
		if once(seen, p.ID, r, "id", "part size") {
			l.c.partSizes = append(l.c.partSizes, p)
		}
	}
	for _, r := range l.rows("part_values.csv") {
		v, ok := l.value(r, "transfer_efficiency_percent")
		method, size := r.required("method"), r.required("part_size")
		i := slices.IndexFunc(l.c.methods, func(m Method) bool { return m.ID == method })
		if i < 0 {
			r.fault("method", "there is no method %q", clip(method))
		}
		if _, known := seen[size]; !known {
			r.fault("part_size", "there is no part size %q", clip(size))
			continue
		}
		if i >= 0 && ok && once(filled, method+" "+size, r, "part_size", "value") {
			l.c.methods[i].PartEfficiencies = append(l.c.methods[i].PartEfficiencies, PartEfficiency{PartSize: size, TransferEfficiencyPercent: v})
		}
	}
}

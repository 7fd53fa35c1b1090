package mesh

import "filmbuild/surfaces/quantity"

// working says how the numbers of a result were found.
func (m *meter) working(r Result, metres float64) []quantity.Working {
	size := r.Box.Size()
	list := []quantity.Working{
		{
			Quantity: "area_m2", Value: r.AreaM2, Unit: "m²", Formula: "by Σ ½·|(b−a)×(c−a)|·u²",
			Terms: map[string]float64{"facets": float64(r.Facets), "Σ": m.all.area.value() / 2, "u": metres}, Source: "identity",
		},
		{
			Quantity: "volume_m3", Value: r.VolumeM3, Unit: "m³", Formula: "by Σ a·((b−a)×(c−a))/6·u³",
			Terms: map[string]float64{"facets": float64(r.Facets), "u": metres}, Source: "identity (divergence theorem)",
		},
		{
			Quantity: "largest_m", Value: r.Box.Largest(), Unit: "m", Formula: "by the largest length along x, y or z, times u",
			Terms: map[string]float64{"x": size[0] / metres, "y": size[1] / metres, "z": size[2] / metres, "u": metres}, Source: "identity",
		},
	}
	for _, f := range r.Faces {
		if m.direction == nil {
			break
		}
		list = append(list, quantity.Working{
			Quantity: f.Name + "_area_m2", Value: f.AreaM2, Unit: "m²", Formula: "by Σ of the facets whose normal lies within α of the axis (first part), of its opposite (second), of neither (rest)",
			Terms: map[string]float64{"α": m.options.AngleDeg, "axis x": m.direction.axis[0], "axis y": m.direction.axis[1], "axis z": m.direction.axis[2]}, Source: "identity",
		})
	}
	return list
}

package mesh

import "math"

// borderDeg is how near a facet's direction may come to the angle of a split
// before its area is reported as near the border. Our own choice: a surveyed
// axis is rarely truer than that.
const borderDeg = 1.0

// The parts of a split, as indexes into direction.names.
const (
	partFirst  = iota // up or left
	partSecond        // down or right
	partRest
)

// direction tells facets apart by which way they face.
type direction struct {
	names     [3]string
	axis      Point // of length 1
	cosine    float64
	low, high float64 // cosines between which a facet is near the border
}

// newDirection returns nil for a mesh that is not split. The options have been
// checked.
func newDirection(o Options) *direction {
	d := direction{names: [3]string{"upper", "lower", "side"}}
	switch o.Split {
	case SplitLeftRight:
		d.names = [3]string{"left", "right", "middle"}
	case SplitUpDown:
	default:
		return nil
	}
	d.axis = o.Axis.times(1 / math.Sqrt(o.Axis.dot(o.Axis)))
	d.cosine, d.low, d.high = cosineDeg(o.AngleDeg), cosineDeg(o.AngleDeg+borderDeg), cosineDeg(o.AngleDeg-borderDeg)
	return &d
}

// cosineDeg is exactly 0 at 90 degrees, so that an upright facet of a split by
// half spaces is on neither side.
func cosineDeg(angle float64) float64 {
	return math.Sin((90 - angle) * math.Pi / 180)
}

// part says which way a facet faces, by its normal of any length, and whether
// it lies near a border. A facet without area has no direction and is counted
// to the rest.
func (d *direction) part(normal Point) (part int, near bool) {
	length := math.Sqrt(normal.dot(normal))
	if length == 0 {
		return partRest, false
	}
	along := normal.dot(d.axis) / length
	near = (along >= d.low && along <= d.high) || (-along >= d.low && -along <= d.high)
	switch {
	case along > d.cosine:
		return partFirst, near
	case along < -d.cosine:
		return partSecond, near
	}
	return partRest, near
}

package mesh

import (
	"encoding/binary"
	"math"
)

// block measures whole records of a binary STL at once: the same sums as
// facet, in a form that keeps up with a disk. It changes nothing and returns
// false when a coordinate is not a number or too large; the records are then
// taken one by one, which finds the place.
func (m *meter) block(data []byte) bool {
	box, ok := blockBox(data)
	if !ok {
		return false
	}
	if !m.started {
		m.start(stlCorner(data[12:]))
	}
	m.box.join(box)
	m.blockSums(data)
	m.facets += int64(len(data) / stlRecord)
	return true
}

// blockBox finds the box of the corners by whole numbers: the bits of a
// float32, with all but the sign flipped for negative ones, are in the order
// of the values, with NaN beyond the infinities. (IEEE 754, formats; a
// processor compares them faster so.)
func blockBox(data []byte) (Box, bool) {
	lowX, lowY, lowZ := int32(math.MaxInt32), int32(math.MaxInt32), int32(math.MaxInt32)
	highX, highY, highZ := int32(math.MinInt32), int32(math.MinInt32), int32(math.MinInt32)
	for ; len(data) >= stlRecord; data = data[stlRecord:] {
		r := data[:stlRecord:stlRecord]
		x, y, z := orderedAt(r, 12), orderedAt(r, 16), orderedAt(r, 20)
		lowX, lowY, lowZ = min(lowX, x), min(lowY, y), min(lowZ, z)
		highX, highY, highZ = max(highX, x), max(highY, y), max(highZ, z)
		x, y, z = orderedAt(r, 24), orderedAt(r, 28), orderedAt(r, 32)
		lowX, lowY, lowZ = min(lowX, x), min(lowY, y), min(lowZ, z)
		highX, highY, highZ = max(highX, x), max(highY, y), max(highZ, z)
		x, y, z = orderedAt(r, 36), orderedAt(r, 40), orderedAt(r, 44)
		lowX, lowY, lowZ = min(lowX, x), min(lowY, y), min(lowZ, z)
		highX, highY, highZ = max(highX, x), max(highY, y), max(highZ, z)
	}
	limit := ordered(math.Float32bits(MaxCoordinate))
	if min(lowX, lowY, lowZ) < ordered(math.Float32bits(-MaxCoordinate)) || max(highX, highY, highZ) > limit {
		return Box{}, false
	}
	return Box{
		Point{unordered(lowX), unordered(lowY), unordered(lowZ)},
		Point{unordered(highX), unordered(highY), unordered(highZ)},
	}, true
}

func orderedAt(data []byte, offset int) int32 {
	return ordered(binary.LittleEndian.Uint32(data[offset:]))
}

func ordered(bits uint32) int32 { return int32(bits) ^ int32(uint32(int32(bits)>>31)>>1) }

func unordered(key int32) float64 {
	return float64(math.Float32frombits(uint32(ordered(uint32(key)))))
}

// blockSums adds area, volume and vector area. The sums are kept in local
// variables and compensated without branches (Knuth's two-sum, which loses
// nothing whichever term is larger): both matter for the speed.
func (m *meter) blockSums(data []byte) {
	area, volume := m.all.area, m.all.volume
	origin, vector, zero := m.origin, m.all.vector, m.all.zero
	for ; len(data) >= stlRecord; data = data[stlRecord:] {
		r := data[:stlRecord:stlRecord]
		ax, ay, az := float64(float32At(r, 12)), float64(float32At(r, 16)), float64(float32At(r, 20))
		ux, uy, uz := float64(float32At(r, 24))-ax, float64(float32At(r, 28))-ay, float64(float32At(r, 32))-az
		vx, vy, vz := float64(float32At(r, 36))-ax, float64(float32At(r, 40))-ay, float64(float32At(r, 44))-az
		nx, ny, nz := uy*vz-uz*vy, uz*vx-ux*vz, ux*vy-uy*vx
		twice := math.Sqrt(nx*nx + ny*ny + nz*nz)
		if twice == 0 {
			zero++
		}
		t := area.total + twice
		z := t - area.total
		area.lost += (area.total - (t - z)) + (twice - z)
		area.total = t
		six := (ax-origin[0])*nx + (ay-origin[1])*ny + (az-origin[2])*nz
		t = volume.total + six
		z = t - volume.total
		volume.lost += (volume.total - (t - z)) + (six - z)
		volume.total = t
		vector[0], vector[1], vector[2] = vector[0]+nx, vector[1]+ny, vector[2]+nz
	}
	m.all.area, m.all.volume, m.all.vector, m.all.zero = area, volume, vector, zero
}

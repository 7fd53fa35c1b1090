package mesh

import "math"

// laneCount is how many facets are measured side by side, each in a lane of its
// own, as a processor's wide registers do it. The sums of a piece of a file are
// those of its lanes, so they are the same on every machine.
const laneCount = 4

// lanes are the sums over the records of a piece of a binary STL: record i goes
// to lane i mod 4. The layout is known to lanes_amd64.s.
type lanes struct {
	origin     [3][laneCount]float64 // about which volumes are summed
	area       [laneCount]float64    // twice the area
	areaLost   [laneCount]float64    // what adding it up rounded away
	volume     [laneCount]float64    // six times the volume
	volumeLost [laneCount]float64
	vector     [3][laneCount]float64 // twice the vector area
	zero       [laneCount]int64      // facets without area
	low, high  [3][laneCount]float32
}

// newLanes has an empty box that lies within the limits, so that the box of
// nothing is no fault.
func newLanes(origin Point) *lanes {
	l := &lanes{}
	for k := range 3 {
		for i := range laneCount {
			l.origin[k][i] = origin[k]
			l.low[k][i], l.high[k][i] = math.MaxFloat32, -math.MaxFloat32
		}
	}
	return l
}

// sum adds whole records and returns false when a coordinate among them is not
// a number or beyond the limit; the sums are then of no use.
func (l *lanes) sum(data []byte) bool {
	done := addWide(data, l)
	for i := range laneCount {
		l.add(data[done:], i)
	}
	return l.numbers()
}

// numbers says whether all coordinates were numbers within the limit: NaN in a
// corner makes the area NaN, anything too large shows in the box.
func (l *lanes) numbers() bool {
	for i := range laneCount {
		if math.IsNaN(l.area[i]) {
			return false
		}
		for k := range 3 {
			if l.low[k][i] < -MaxCoordinate || l.high[k][i] > MaxCoordinate {
				return false
			}
		}
	}
	return true
}

// add measures the records of a lane. The sums are kept in local variables and
// compensated without branches (Knuth's two-sum, which loses nothing whichever
// term is larger): both matter for the speed. Products are rounded before they
// are added, as float64(x*y) demands, on processors too that could do both at
// once: lanes_amd64.s does the same operations in the same order.
func (l *lanes) add(data []byte, i int) {
	area, volume := sum{l.area[i], l.areaLost[i]}, sum{l.volume[i], l.volumeLost[i]}
	ox, oy, oz := l.origin[0][i], l.origin[1][i], l.origin[2][i]
	wx, wy, wz := l.vector[0][i], l.vector[1][i], l.vector[2][i]
	zero := l.zero[i]
	for at := i * stlRecord; at+stlRecord <= len(data); at += laneCount * stlRecord {
		r := data[at : at+stlRecord : at+stlRecord]
		l.widen(r, i)
		ax, ay, az := float64(float32At(r, 12)), float64(float32At(r, 16)), float64(float32At(r, 20))
		ux, uy, uz := float64(float32At(r, 24))-ax, float64(float32At(r, 28))-ay, float64(float32At(r, 32))-az
		vx, vy, vz := float64(float32At(r, 36))-ax, float64(float32At(r, 40))-ay, float64(float32At(r, 44))-az
		nx := float64(uy*vz) - float64(uz*vy)
		ny := float64(uz*vx) - float64(ux*vz)
		nz := float64(ux*vy) - float64(uy*vx)
		twice := math.Sqrt(float64(nx*nx) + float64(ny*ny) + float64(nz*nz))
		if twice == 0 {
			zero++
		}
		area = area.plus(twice)
		volume = volume.plus(float64((ax-ox)*nx) + float64((ay-oy)*ny) + float64((az-oz)*nz))
		wx, wy, wz = wx+nx, wy+ny, wz+nz
	}
	l.area[i], l.areaLost[i] = area.total, area.lost
	l.volume[i], l.volumeLost[i] = volume.total, volume.lost
	l.vector[0][i], l.vector[1][i], l.vector[2][i] = wx, wy, wz
	l.zero[i] = zero
}

// plus is add without a branch.
func (s sum) plus(value float64) sum {
	t := s.total + value
	z := t - s.total
	return sum{t, s.lost + ((s.total - (t - z)) + (value - z))}
}

// widen takes the corners of a record into the box of a lane.
func (l *lanes) widen(r []byte, i int) {
	for k := range 3 {
		for at := 12 + 4*k; at < stlRecord-4; at += 12 {
			v := float32At(r, at)
			if v < l.low[k][i] {
				l.low[k][i] = v
			}
			if v > l.high[k][i] {
				l.high[k][i] = v
			}
		}
	}
}

// into adds the sums to those of a mesh, lane by lane.
func (l *lanes) into(m *meter) {
	for i := range laneCount {
		m.all.area.add(l.area[i])
		m.all.area.add(l.areaLost[i])
		m.all.volume.add(l.volume[i])
		m.all.volume.add(l.volumeLost[i])
		m.all.zero += l.zero[i]
		for k := range 3 {
			m.all.vector[k] += l.vector[k][i]
			m.box.Low[k] = min(m.box.Low[k], float64(l.low[k][i])+0) // + 0 makes −0 a 0
			m.box.High[k] = max(m.box.High[k], float64(l.high[k][i])+0)
		}
	}
}

package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/placing"
	"filmbuild/surfaces/planar"
)

func taped(t *testing.T, tapes ...placing.Tape) placing.Fix {
	t.Helper()
	p := placing.NewPlace()
	p.Tapes = tapes
	f, err := p.Locate()
	require.NoError(t, err)
	return f
}

func tape(x, y, distance float64) placing.Tape {
	return placing.Tape{XM: x, YM: y, DistanceM: distance}
}

// TR-1 to TR-3: two tapes from a baseline (identity, mark H).
func TestPlacesTwoTapes(t *testing.T) {
	for _, row := range []struct {
		id               string
		d, r1, r2, x, y  float64
		gamma, errorTape float64
	}{
		{"TR-1", 1000, 800, 700, 575, 556.2148865321748, 83.334573, 1.4238375},
		{"TR-2", 1000, 600, 800, 360, 480, 90, math.Sqrt2},
		{"TR-3", 500, 1300, 1200, 500, 1200, 22.619865, 3.6769553},
		{"TR-5", 2000, 1010, 1010, 1000, 141.7744688, 163.861398, 5.0877964},
	} {
		const scale = 0.001 // the rows are in mm
		f := taped(t, tape(0, 0, row.r1*scale), tape(row.d*scale, 0, row.r2*scale))
		assert.InEpsilon(t, row.x*scale, f.XM, 1e-9, row.id)
		assert.InEpsilon(t, row.y*scale, f.YM, 1e-9, row.id)
		assert.InEpsilon(t, row.gamma, f.AngleDeg, 1e-6, "TR-4: angle of %s", row.id)
		assert.InEpsilon(t, row.errorTape, f.ErrorRatio, 1e-6, "TR-4: error of %s", row.id)
	}
}

// TR-6 (published data in a forum) and TR-7 (published challenge case, distances
// rounded to 0.001): three tapes.
func TestPlacesThreeTapes(t *testing.T) {
	f := taped(t, tape(795, 332, 245.735630302), tape(795, 569, 327.946642001), tape(516, 569, 220.635445928))
	assert.InDelta(t, 550, f.XM, 1e-6, "TR-6")
	assert.InDelta(t, 351, f.YM, 1e-6, "TR-6")
	assert.InDelta(t, 0, f.ResidualM, 1e-6, "TR-6")
	f = taped(t, tape(1, 2, 1.414), tape(1, 1, 2.236), tape(2, 2, 1))
	assert.InDelta(t, 2, f.XM, 0.001, "TR-7")
	assert.InDelta(t, 3, f.YM, 0.001, "TR-7")
}

// TR-9: tapes that do not meet are refused, r1 + r2 < d.
func TestPlacesTapesTooShort(t *testing.T) {
	p := placing.NewPlace()
	p.Tapes = []placing.Tape{tape(0, 0, 0.3), tape(1, 0, 0.6)}
	_, err := p.Locate()
	require.ErrorContains(t, err, "do not meet")
	require.ErrorContains(t, err, "0.1 m too short")
}

// TR-10: 300 from edge A and 500 from edge B, inclined 80° to A.
func TestPlacesOffsets(t *testing.T) {
	p := placing.NewPlace()
	p.Offsets = &placing.Offsets{FromAM: 0.3, FromBM: 0.5, AngleDeg: 80}
	f, err := p.Locate()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.5606114001554, f.XM, 1e-9, "TR-10")
	assert.InEpsilon(t, 0.3, f.YM, 1e-12, "TR-10")
}

// TR-11: a point of the figure, turned by 30° and shifted to (5, 1.5).
func TestPlacesTurnedFigure(t *testing.T) {
	p := placing.NewPlace()
	p.Offsets = &placing.Offsets{FromAM: 1.5, FromBM: 5, AngleDeg: 90}
	p.RotationDeg, p.Anchor = 30, "origin"
	f, err := p.Locate()
	require.NoError(t, err)
	at := f.Placement(planar.Box{}).Point(planar.Point{X: 1.2, Y: 0.4})
	assert.InEpsilon(t, 5.8392304845, at.X, 1e-9, "TR-11")
	assert.InEpsilon(t, 2.4464101615, at.Y, 1e-9, "TR-11")
}

// PS-1, PS-3, PS-5 (FAA airframe handbook and an encyclopaedia): station 137 is
// 137 in aft; 130.0 in = 330.2 cm; 732 in = 1859.28 cm. PS-6: the other side is
// (FS, −BL, WL).
func TestPlacesStations(t *testing.T) {
	for inches, metres := range map[float64]float64{137: 3.4798, 130: 3.302, 732: 18.5928} {
		p := placing.NewPlace()
		p.Station = &placing.Station{StationM: inches * markingInch, ButtLineM: -0.6, WaterLineM: -0.2, Face: "left", Datum: "nose"}
		f, err := p.Locate()
		require.NoError(t, err)
		assert.InEpsilon(t, metres, f.XM, 1e-12, "PS-1, PS-5: aft is to the right on the left side")
		assert.InDelta(t, -0.2, f.YM, 0, "PS-3: water lines may be negative")
		other := f.OtherSide.Station
		assert.InDelta(t, metres, other.StationM, 1e-9, "PS-6")
		assert.InDelta(t, 0.6, other.ButtLineM, 0, "PS-6")
		assert.InDelta(t, -0.2, other.WaterLineM, 0, "PS-6")
		assert.Equal(t, "right", other.Face, "PS-6")
	}
	p := placing.NewPlace()
	p.Station = &placing.Station{StationM: 1, Face: "left"}
	_, err := p.Locate()
	require.ErrorContains(t, err, "datum", "PS-3: the datum must be recorded")
}

// PS-4: (aft, right, up) is right-handed, as is (forward, left, up), of which two
// axes are reversed. The views follow: on each face the way to the right crossed
// with the way up points out of the aircraft, to the viewer.
func TestPlacesFrameIsRightHanded(t *testing.T) {
	view := func(face string, fs, bl, wl float64) [2]float64 {
		p := placing.NewPlace()
		p.Station = &placing.Station{StationM: fs, ButtLineM: bl, WaterLineM: wl, Face: face, Datum: "nose"}
		f, err := p.Locate()
		require.NoError(t, err)
		return [2]float64{f.XM, f.YM}
	}
	outward := map[string][3]float64{"left": {0, -1, 0}, "right": {0, 1, 0}, "upper": {0, 0, 1}, "lower": {0, 0, -1}}
	for face, want := range outward {
		var right, up [3]float64 // of the view, in (aft, right, up)
		for axis, unit := range [][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
			seen := view(face, unit[0], unit[1], unit[2])
			right[axis], up[axis] = seen[0], seen[1]
		}
		cross := [3]float64{right[1]*up[2] - right[2]*up[1], right[2]*up[0] - right[0]*up[2], right[0]*up[1] - right[1]*up[0]}
		assert.Equal(t, want, cross, "PS-4 %s", face)
	}
}

package sheet

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A reader of SVG that knows nothing of the code that writes it: groups with
// their attributes, and paths of M L H V A C Z by the grammar of the W3C.

type svgGroup struct {
	attributes map[string]string
	paths      []string
}

type svg struct {
	width, height string
	box           []float64
	groups        map[string]*svgGroup
	texts         []string
	paths         int
}

func readSVG(t require.TestingT, data []byte) svg {
	out := svg{groups: map[string]*svgGroup{}}
	var open []*svgGroup
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			a := map[string]string{}
			for _, one := range x.Attr {
				a[one.Name.Local] = one.Value
			}
			switch x.Name.Local {
			case "svg":
				out.width, out.height = a["width"], a["height"]
				for _, w := range strings.Fields(a["viewBox"]) {
					n, err := strconv.ParseFloat(w, 64)
					require.NoError(t, err)
					out.box = append(out.box, n)
				}
			case "g":
				g := &svgGroup{attributes: a}
				open = append(open, g)
				if a["id"] != "" {
					require.NotContains(t, out.groups, a["id"], "an id stands once")
					out.groups[a["id"]] = g
				}
			case "path":
				out.paths++
				if len(open) > 0 {
					open[len(open)-1].paths = append(open[len(open)-1].paths, a["d"])
				}
			case "script", "style", "a", "image", "foreignObject":
				require.Fail(t, "a sheet holds nothing but shapes and letters", x.Name.Local)
			}
		case xml.EndElement:
			if x.Name.Local == "g" {
				open = open[:len(open)-1]
			}
		case xml.CharData:
			if s := strings.TrimSpace(string(x)); s != "" {
				out.texts = append(out.texts, s)
			}
		}
	}
}

func (s svg) says(text string) bool { return strings.Contains(strings.Join(s.texts, "\n"), text) }

// ring is one closed subpath: what it encloses, its length, and points along it.
type ring struct {
	area, length float64 // signed, in the axes of the sheet
	points       [][2]float64
}

// readPath reads path data into closed subpaths.
func readPath(t require.TestingT, data string) []ring {
	in := tokens(data)
	number := func() float64 {
		require.NotEmpty(t, in, "the path breaks off")
		n, err := strconv.ParseFloat(in[0], 64)
		require.NoError(t, err)
		in = in[1:]
		return n
	}
	var rings []ring
	var now *ring
	var x, y, startX, startY float64
	line := func(x2, y2 float64) {
		now.area += (x*y2 - x2*y) / 2
		now.length += math.Hypot(x2-x, y2-y)
		now.points = append(now.points, [2]float64{x2, y2})
		x, y = x2, y2
	}
	for command := ""; len(in) > 0; {
		if c := in[0]; strings.ContainsAny(c, "MLHVACZ") && len(c) == 1 {
			command, in = c, in[1:]
		} else {
			require.NotContains(t, "ZM", command, "a number has no command")
		}
		switch command {
		case "M":
			rings = append(rings, ring{})
			now = &rings[len(rings)-1]
			x, y = number(), number()
			startX, startY = x, y
		case "L":
			line(number(), number())
		case "H":
			line(number(), y)
		case "V":
			line(x, number())
		case "Z":
			line(startX, startY)
		case "A":
			rx, ry, turn, large, sweep, x2, y2 := number(), number(), number(), number(), number(), number(), number()
			require.InDelta(t, rx, ry, 0)
			require.Zero(t, turn)
			now.arc(x, y, x2, y2, rx, large == 1, sweep == 1)
			x, y = x2, y2
		case "C":
			now.cubic([4][2]float64{{x, y}, {number(), number()}, {number(), number()}, {number(), number()}})
			last := now.points[len(now.points)-1]
			x, y = last[0], last[1]
		}
	}
	return rings
}

// tokens parts numbers and commands.
func tokens(data string) []string {
	var out strings.Builder
	for _, r := range data {
		if strings.ContainsRune("MLHVACZ", r) {
			out.WriteString(" " + string(r) + " ")
		} else {
			out.WriteRune(r)
		}
	}
	return strings.Fields(strings.ReplaceAll(out.String(), ",", " "))
}

// arc finds the middle of an arc from its ends (W3C, SVG 2, appendix B.2.4).
func (r *ring) arc(x1, y1, x2, y2, radius float64, large, sweep bool) {
	hx, hy := (x1-x2)/2, (y1-y2)/2
	half := hx*hx + hy*hy
	radius = math.Max(radius, math.Sqrt(half))
	k := math.Sqrt(math.Max(0, (radius*radius-half)/half))
	if large == sweep {
		k = -k
	}
	cx, cy := k*hy+(x1+x2)/2, -k*hx+(y1+y2)/2
	from, to := math.Atan2(y1-cy, x1-cx), math.Atan2(y2-cy, x2-cx)
	turn := to - from
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	r.area += radius*radius/2*turn + (cx*(y2-y1)-cy*(x2-x1))/2
	r.length += math.Abs(turn) * radius
	for i := 1; i <= 32; i++ {
		a := from + turn*float64(i)/32
		r.points = append(r.points, [2]float64{cx + radius*math.Cos(a), cy + radius*math.Sin(a)})
	}
}

// cubic integrates a Bézier curve: ½∮(x·dy − y·dx) by the rule of Boole, which is
// exact for it (degree 5), on its parts; lengths by chords.
func (r *ring) cubic(p [4][2]float64) {
	at := func(u float64) (x, y, dx, dy float64) {
		v := 1 - u
		for i, w := range [4]float64{v * v * v, 3 * v * v * u, 3 * v * u * u, u * u * u} {
			x, y = x+w*p[i][0], y+w*p[i][1]
		}
		for i, w := range [4]float64{-3 * v * v, 3*v*v - 6*v*u, 6*v*u - 3*u*u, 3 * u * u} {
			dx, dy = dx+w*p[i][0], dy+w*p[i][1]
		}
		return x, y, dx, dy
	}
	weights := [5]float64{7, 32, 12, 32, 7}
	for i, w := range weights {
		x, y, dx, dy := at(float64(i) / 4)
		r.area += w / 90 * (x*dy - y*dx) / 2
	}
	before := p[0]
	for i := 1; i <= 64; i++ {
		x, y, _, _ := at(float64(i) / 64)
		r.length += math.Hypot(x-before[0], y-before[1])
		before = [2]float64{x, y}
		if i%8 == 0 {
			r.points = append(r.points, before)
		}
	}
}

// enclosed is the area of subpaths together by the even-odd rule, of lines that
// do not cross: what lies in an even number of others adds, the rest takes off.
func enclosed(rings []ring) float64 {
	sum := 0.0
	for i, r := range rings {
		inside := 0
		for k, other := range rings {
			if i != k && other.holds(r.points[0], r.points[len(r.points)/3]) {
				inside++
			}
		}
		sum += math.Abs(r.area) * float64(1-2*(inside%2))
	}
	return sum
}

// holds reports whether the middle of two points lies in the ring's polygon, or
// either of them where they touch it.
func (r ring) holds(p, q [2]float64) bool {
	votes := 0
	for _, at := range [][2]float64{p, q, {(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}} {
		in := false
		for i := range r.points {
			a, b := r.points[i], r.points[(i+1)%len(r.points)]
			if (a[1] > at[1]) != (b[1] > at[1]) && at[0] < a[0]+(b[0]-a[0])*(at[1]-a[1])/(b[1]-a[1]) {
				in = !in
			}
		}
		if in {
			votes++
		}
	}
	return votes >= 2
}

func TestTheReaderReads(t *testing.T) {
	// A square with a round hole, a half disc (identities).
	rings := readPath(t, "M0 0L10 0L10 10L0 10ZM3 5A2 2 0 0 1 7 5A2 2 0 0 1 3 5Z")
	require.Len(t, rings, 2)
	require.InEpsilon(t, 100-4*math.Pi, enclosed(rings), 1e-12)
	require.InEpsilon(t, 4*math.Pi, rings[1].length, 1e-12)
	half := readPath(t, "M0 0A5 5 0 0 0 10 0Z")
	require.InEpsilon(t, 12.5*math.Pi, enclosed(half), 1e-12)
	bent := readPath(t, "M0 0C0 10 10 10 10 0Z")
	require.InEpsilon(t, 60.0, enclosed(bent), 1e-12) // 3/20 of the box of the controls for each bend: 0.6·100
}

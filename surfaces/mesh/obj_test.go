package mesh

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const square = "v 0 0 0\nv 2 0 0\nv 2 2 0\nv 0 2 0\n"

func TestOBJ(t *testing.T) {
	for name, text := range map[string]string{
		"numbers":               square + "f 1 2 3 4",
		"negative numbers":      square + "f -4 -3 -2 -1",
		"texture and normal":    square + "vt 0 0\nvn 0 0 1\nf 1/1/1 2//1 3/1 4\n",
		"two triangles":         square + "f 1 2 3\nf 1 3 4 # the rest\n",
		"joined line":           square + "f 1 2 \\\n 3 \\\r\n4\n",
		"weights and colours":   "v 0 0 0 1\nv 2 0 0 1 1 1\nv 2 2 0 .5 .5 .5 1\nv 0 2 0\nf 1 2 3 4\n",
		"points and lines also": square + "p 1 2\nl 1 2 3\nf 1 2 3 4\n",
	} {
		t.Run(name, func(t *testing.T) {
			r := measureText(t, text)
			assert.Equal(t, FormatOBJ, r.Format)
			assert.Equal(t, 4.0, r.AreaM2)
		})
	}
}

func TestOBJSolids(t *testing.T) {
	r := measureText(t, square+"o wing\nf 1 2 3\ng left\nf 1 2 3\ng right\nf 1 3 4\ng left\nf 1 3 4\no fin\nf 1 2 3 4\n")
	var names []string
	var areas []float64
	for _, s := range r.Solids {
		names, areas = append(names, s.Name), append(areas, s.AreaM2)
	}
	assert.Equal(t, []string{"wing", "wing/left", "wing/right", "fin"}, names)
	assert.Equal(t, []float64{2, 4, 2, 4}, areas)
}

func TestOBJWarnings(t *testing.T) {
	r := measureText(t, square+"f 1 2 3 4\ncurv 0 1 1 2\nturn 3\nturn 4\n")
	assert.Subset(t, codes(r), []string{"free_form_surface", "unknown_statement"})
	for _, w := range r.Warnings {
		if w.Code == "unknown_statement" {
			assert.EqualValues(t, 2, w.Count)
			assert.Equal(t, Place{Line: 7}, w.First)
		}
	}
}

func TestOBJFaults(t *testing.T) {
	for name, c := range map[string]struct {
		text, code string
		line       int64
	}{
		"vertex 0":            {square + "f 0 1 2\n", "unknown_reference", 5},
		"vertex to come":      {square + "f 1 2 5\nv 0 0 1\n", "unknown_reference", 5},
		"before the first":    {square + "f 1 2 -5\n", "unknown_reference", 5},
		"two corners":         {square + "f 1 2\n", "too_few_corners", 5},
		"a word":              {square + "f 1 2 x\n", "syntax", 5},
		"vertex of two":       {"v 0 0\n", "syntax", 1},
		"lost line break":     {"v 0 0 0 v 1 0 0\n", "syntax", 1},
		"nine numbers":        {"v 0 0 0 1 1 1 1 1 1\n", "syntax", 1},
		"NaN":                 {"v 0 nan 0\n", "not_a_number", 1},
		"ends in a backslash": {square + "f 1 2 \\", "truncated", 5},
		"too many corners":    {square + "f" + strings.Repeat(" 1", MaxCorners+1), "too_many", 5},
		"joined without end":  {square + strings.Repeat("f "+strings.Repeat("1 ", 30000)+"\\\n", 20), "line_too_long", 22},
		"too many groups":     {square + manyGroups(), "too_many", 4 + 2*MaxSolids + 2},
	} {
		t.Run(name, func(t *testing.T) {
			var broken *FileError
			require.ErrorAs(t, readText(FormatOBJ, c.text), &broken)
			assert.Equal(t, c.code, broken.Code, broken.Error())
			assert.Equal(t, Place{Line: c.line}, broken.At, broken.Error())
		})
	}
}

func manyGroups() string {
	var text strings.Builder
	for i := range MaxSolids + 1 {
		text.WriteString(fmt.Sprintf("g part %d\nf 1 2 3\n", i))
	}
	return text.String()
}

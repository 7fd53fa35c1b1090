package mesh

import (
	"fmt"
	"slices"
	"strings"
)

// unit is a unit of length that a file may be drawn in.
type unit struct {
	name   string
	metres float64
}

// units lists those a caller may state. The inch is 0.0254 m exactly, the foot
// 12 inches (international yard and pound agreement of 1959).
func units() []unit {
	return []unit{{"m", 1}, {"mm", 0.001}, {"cm", 0.01}, {"in", 0.0254}, {"ft", 0.3048}}
}

// Units returns the names of the units in which a file may be drawn.
func Units() []string {
	var names []string
	for _, u := range units() {
		names = append(names, u.name)
	}
	return names
}

// Metres returns the length of a unit of a file in metres, and an error for a
// unit that is not one of Units, the empty one included.
func Metres(name string) (float64, error) {
	all := units()
	if i := slices.IndexFunc(all, func(u unit) bool { return u.name == name }); i >= 0 {
		return all[i].metres, nil
	}
	if name == "" {
		return 0, fmt.Errorf("the unit of the mesh is missing: the file does not say it; give one of %s", strings.Join(Units(), ", "))
	}
	return 0, fmt.Errorf("%q is not a unit of a mesh; give one of %s", name, strings.Join(Units(), ", "))
}

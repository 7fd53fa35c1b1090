package surfaces

// onProfile says how wide a strip along a circle of a round shape is.
const onProfile = "on the skin, away from the line along the axis"

// circleLines names the circles of a round shape that a strip may follow.
func circleLines(names ...string) []StripLine {
	var lines []StripLine
	for _, n := range names {
		lines = append(lines, StripLine{Name: n, Measured: onProfile})
	}
	return lines
}

// junction is the number of the first stretch of a face, where it meets the
// one before, or of the stretch after its last.
func (v revolution) junction(face string, after bool) int {
	at := 0
	for i, m := range v.profile {
		if m.face == face {
			if !after {
				return i
			}
			at = i + 1
		}
	}
	return at
}

// Lines implements Striped.
func (s *Cylinder) Lines() []StripLine { return circleLines("end_1", "end_2") }

// Strip implements Striped.
func (s *Cylinder) Strip(along string, width float64, _ Window) (Measurement, error) {
	v := s.profile()
	return v.strip(s, along, v.junction("side", along == "end_2"), width), nil
}

// Lines implements Striped. The point of a whole cone is no line.
func (s *Frustum) Lines() []StripLine {
	if or(s.Radius2M, 0) == 0 {
		return circleLines("end_1")
	}
	return circleLines("end_1", "end_2")
}

// Strip implements Striped.
func (s *Frustum) Strip(along string, width float64, _ Window) (Measurement, error) {
	v := s.profile()
	return v.strip(s, along, v.junction("side", along == "end_2"), width), nil
}

// Lines implements Striped.
func (s *Cap) Lines() []StripLine { return circleLines("rim") }

// Strip implements Striped.
func (s *Cap) Strip(along string, width float64, _ Window) (Measurement, error) {
	v := s.profile()
	return v.strip(s, along, len(v.profile), width), nil
}

// Lines implements Striped.
func (s *Nose) Lines() []StripLine { return circleLines("base") }

// Strip implements Striped.
func (s *Nose) Strip(along string, width float64, _ Window) (Measurement, error) {
	v := s.profile()
	return v.strip(s, along, len(v.profile), width), nil
}

// Lines implements Striped: where a head meets the straight part, or the other
// head.
func (s *Vessel) Lines() []StripLine { return circleLines("head_1", "head_2") }

// Strip implements Striped.
func (s *Vessel) Strip(along string, width float64, _ Window) (Measurement, error) {
	v := s.profile()
	return v.strip(s, along, v.junction(along, along == "head_1"), width), nil
}

// Lines implements Striped: the ends of the profile that are off the axis.
func (s *Revolved) Lines() []StripLine {
	var names []string
	if s.Profile[0][1] > 0 {
		names = append(names, "end_1")
	}
	if s.Profile[len(s.Profile)-1][1] > 0 {
		names = append(names, "end_2")
	}
	return circleLines(names...)
}

// Strip implements Striped.
func (s *Revolved) Strip(along string, width float64, _ Window) (Measurement, error) {
	v := s.profile()
	junction := 0
	if along == "end_2" {
		junction = len(v.profile)
	}
	return v.strip(s, along, junction, width), nil
}

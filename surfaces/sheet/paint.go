package sheet

import (
	"hash/fnv"
	"strconv"
	"strings"
)

// fills are the colours of a screen that stand for names of paint. They serve to
// tell the passes apart and match no paint.
func fills() map[string]string {
	return map[string]string{
		"white": "#ffffff", "cream": "#f6eed2", "ivory": "#f6eed2", "yellow": "#f5c518", "gold": "#d4a72c", "orange": "#ee7a1d",
		"red": "#c8202f", "maroon": "#7a1f2b", "pink": "#e79aa9", "purple": "#6a4c93", "blue": "#21468b", "navy": "#1b2a4a",
		"green": "#2f6b3c", "olive": "#5d6238", "brown": "#6b4a2f", "tan": "#c2a878", "silver": "#c3c8cc", "grey": "#8b9298", "gray": "#8b9298", "black": "#1f2225",
	}
}

// fill finds a colour of the screen for the name of a paint: by its last known
// word, or else one that is always the same for the name.
func fill(colour string) string {
	known := fills()
	found := ""
	for _, word := range strings.FieldsFunc(colour, func(r rune) bool { return r == ' ' || r == '-' || r == '_' }) {
		if one, ok := known[word]; ok {
			found = one
		}
	}
	if found != "" {
		return found
	}
	hash := fnv.New32a()
	hash.Write([]byte(colour))
	return "hsl(" + strconv.Itoa(int(hash.Sum32()%360)) + ",45%,55%)"
}

// identifiers makes an id of each colour, all unlike: sky blue becomes sky-blue.
func identifiers(passes []Pass) []string {
	taken := map[string]bool{}
	out := make([]string, len(passes))
	for i, p := range passes {
		id := strings.NewReplacer(" ", "-", "_", "-").Replace(p.Colour)
		if id[0] >= '0' && id[0] <= '9' {
			id = "colour-" + id
		}
		for n, once := 2, id; taken[id]; n++ {
			id = once + "-" + strconv.Itoa(n)
		}
		taken[id] = true
		out[i] = id
	}
	return out
}

package wire

import (
	"reflect"
	"strings"
)

// Union says how a value of an interface type is told apart: by the text in
// one member of its object.
type Union struct {
	Key   string                        // the member that names the kind, such as kind or operation
	New   func(kind string) (any, bool) // a pointer to an empty value of the kind, its defaults set
	Kinds []string                      // all kinds, for the message
}

// Unions maps interface types to how they are told apart.
type Unions map[reflect.Type]Union

// Add names the union of interface type T.
func Add[T any](unions Unions, u Union) { unions[reflect.TypeFor[T]()] = u }

// closest returns the name most like an unknown one, or "" when none is near.
func closest(name string, known []string) string {
	best, least := "", 3
	for _, k := range known {
		if d := distance(strings.ToLower(name), k); d < least {
			best, least = k, d
		}
	}
	if best == "" { // as contingency_pct for contingency_percent
		for _, k := range known {
			if stem := commonStart(strings.ToLower(name), k); stem >= 5 && 2*stem > len(k) {
				return k
			}
		}
		for _, k := range known { // area for area_m2: the unit suffix was left off
			if strings.HasPrefix(k, strings.ToLower(name)+"_") {
				return k
			}
		}
	}
	return best
}

// distance is the number of letters to insert, delete or change (Levenshtein).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// commonStart is the number of letters that two words have in common from the
// start.
func commonStart(a, b string) int {
	n := 0
	for n < len(a) && n < len(b) && a[n] == b[n] {
		n++
	}
	return n
}

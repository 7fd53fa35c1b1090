package fault

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOnlyTheFirstFaultAtAPointerIsKept(t *testing.T) {
	var l List
	require.NoError(t, l.Err())
	assert.True(t, l.Empty())
	l.At("/components/0")("/shape/width_m", "wrong_unit", "first")
	l.Addf("/components/0/shape/width_m", "out_of_range", "%s", "second")
	var list *Error
	require.ErrorAs(t, l.Err(), &list)
	assert.Equal(t, []Fault{{Pointer: "/components/0/shape/width_m", Code: "wrong_unit", Detail: "first"}}, list.Faults)
	assert.Contains(t, list.Error(), "wrong_unit")
}

func TestFaultsBelowAPointer(t *testing.T) {
	var l List
	l.Add("/components/1/shape/width_m", "out_of_range", "wide")
	for _, pointer := range []string{"", "/components", "/components/1", "/components/1/shape", "/components/1/shape/width_m"} {
		assert.True(t, l.HasBelow(pointer), pointer)
	}
	for _, pointer := range []string{"/component", "/components/10", "/components/1/sha", "/components/1/shape/width_m/low", "/steps"} {
		assert.False(t, l.HasBelow(pointer), pointer)
	}
	assert.True(t, l.Has("/components/1/shape/width_m"))
	assert.False(t, l.Has("/components/1"))
	l.Add("", "required", "the whole")
	assert.True(t, l.Has(""))
}

// What follows from a fault must not be computed, even where the list was too
// full to keep that fault.
func TestFaultsBeyondTheListCountToo(t *testing.T) {
	var l List
	for i := range Most + 7 {
		l.Add(fmt.Sprintf("/steps/%d/coats", i), "out_of_range", "coats")
	}
	assert.True(t, l.HasBelow(fmt.Sprintf("/steps/%d", Most+3)))
	var list *Error
	require.ErrorAs(t, l.Err(), &list)
	require.Len(t, list.Faults, Most+1)
	assert.Equal(t, "too_many", list.Faults[Most].Code)
	assert.Contains(t, list.Faults[Most].Detail, "7 further faults")
}

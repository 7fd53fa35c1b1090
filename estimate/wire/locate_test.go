package wire

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

type located struct {
	A     float64            `json:"a"`
	List  []*located         `json:"list"`
	Named map[string]float64 `json:"named"`
	Union any                `json:"-" wire:"inline"`
	Outer any                `json:"outer"`
	Pair  [2]float64         `json:"pair"`
}

type inner struct {
	B *float64 `json:"b/c"`
}

func TestLocate(t *testing.T) {
	two := 2.0
	root := &located{A: 1, List: []*located{nil, {A: 5, Union: &inner{&two}}}, Named: map[string]float64{"n": 7}, Outer: &inner{&two}, Pair: [2]float64{8, 9}}
	for pointer, want := range map[string]float64{"/a": 1, "/list/1/a": 5, "/list/1/b~1c": 2, "/outer/b~1c": 2, "/named/n": 7, "/pair/1": 9} {
		v, ok := Locate(root, pointer)
		if assert.True(t, ok, pointer) {
			assert.Equal(t, want, v.Float(), pointer)
		}
	}
	for _, pointer := range []string{"/x", "/list/2/a", "/list/-1", "/list/x", "/list/0/a", "/a/b", "/named/m", "/union", "/outer/z"} {
		_, ok := Locate(root, pointer)
		assert.False(t, ok, pointer)
	}
	v, ok := Locate(root, "/a")
	assert.True(t, ok)
	v.SetFloat(4)
	assert.Equal(t, 4.0, root.A, "what is found can be set")
}

package wire

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/fault"
)

func node(t require.TestingT, text string) *Node {
	n, err := Parse([]byte(text), &fault.List{})
	require.NoError(t, err)
	return n
}

func merged(t require.TestingT, base, patch string) (*Node, []string) {
	var said []string
	n := Merge(node(t, base), node(t, patch), func(pointer, code, _ string) { said = append(said, pointer+" "+code) })
	return &n, said
}

// The test cases of RFC 7396 appendix A (read), those whose target is an object
// or becomes one. A null that removes what is not there is told of, which the
// RFC leaves alone.
func TestRFC7396(t *testing.T) {
	for _, c := range [][3]string{
		{`{"a":"b"}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"b"}`, `{"b":"c"}`, `{"a":"b","b":"c"}`},
		{`{"a":"b"}`, `{"a":null}`, `{}`},
		{`{"a":"b","b":"c"}`, `{"a":null}`, `{"b":"c"}`},
		{`{"a":["b"]}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"c"}`, `{"a":["b"]}`, `{"a":["b"]}`},
		{`{"a":{"b":"c"}}`, `{"a":{"b":"d","c":null}}`, `{"a":{"b":"d"}}`},
		{`{"a":[{"b":"c"}]}`, `{"a":[1]}`, `{"a":[1]}`},
		{`["a","b"]`, `["c","d"]`, `["c","d"]`},
		{`{"a":"b"}`, `["c"]`, `["c"]`},
		{`{"a":"foo"}`, `"bar"`, `"bar"`},
		{`{"e":null}`, `{"a":1}`, `{"e":null,"a":1}`},
		{`[1,2]`, `{"a":"b","c":null}`, `{"a":"b"}`},
		{`{}`, `{"a":{"bb":{"ccc":null}}}`, `{"a":{"bb":{}}}`},
	} {
		got, _ := merged(t, c[0], c[1])
		assert.True(t, Same(node(t, c[2]), got), "%s with %s", c[0], c[1])
	}
}

// Elements are found by id wherever they stand.
func TestListsWithIds(t *testing.T) {
	const base = `{"steps":[{"id":"a","x":1,"deep":{"y":2,"z":3}},{"id":"b","x":2},{"id":"c","x":3}],"plain":[1,2]}`
	for _, c := range []struct{ patch, want, said string }{
		{`{"steps":[{"id":"b","x":9}]}`, `[{"id":"a","x":1,"deep":{"y":2,"z":3}},{"id":"b","x":9},{"id":"c","x":3}]`, ""},
		{`{"steps":[{"id":"a","x":null,"deep":{"z":null}}]}`, `[{"id":"a","deep":{"y":2}},{"id":"b","x":2},{"id":"c","x":3}]`, ""},
		{`{"steps":[{"id":"a"},{"id":"new","x":7,"gone":{"q":1}},{"id":"newer"}]}`, `[{"id":"a","x":1,"deep":{"y":2,"z":3}},{"id":"new","x":7,"gone":{"q":1}},{"id":"newer"},{"id":"b","x":2},{"id":"c","x":3}]`, ""},
		{`{"steps":[{"id":"new"}]}`, `[{"id":"a","x":1,"deep":{"y":2,"z":3}},{"id":"b","x":2},{"id":"c","x":3},{"id":"new"}]`, ""},
		{`{"steps":{"a":null,"c":{"x":4},"d":{"x":5}}}`, `[{"id":"b","x":2},{"id":"c","x":4},{"id":"d","x":5}]`, ""},
		{`{"steps":{"nobody":null}}`, `[{"id":"a","x":1,"deep":{"y":2,"z":3}},{"id":"b","x":2},{"id":"c","x":3}]`, "/steps/nobody unknown_reference"},
		{`{"steps":[{"id":"a","q":null}]}`, `[{"id":"a","x":1,"deep":{"y":2,"z":3}},{"id":"b","x":2},{"id":"c","x":3}]`, "/steps/0/q unknown_reference"},
		{`{"steps":[{"x":1}]}`, `[{"x":1}]`, ""},
		{`{"steps":[]}`, `[]`, ""},
	} {
		got, said := merged(t, base, c.patch)
		steps, found := got.Member("steps")
		require.True(t, found)
		assert.True(t, Same(node(t, c.want), steps), "%s", c.patch)
		assert.Equal(t, c.said, strings.Join(said, ";"), "%s", c.patch)
		plain, _ := got.Member("plain")
		assert.True(t, Same(node(t, `[1,2.0]`), plain))
	}
	untouched := node(t, base)
	Merge(untouched, node(t, `{"steps":{"a":null}}`), func(string, string, string) {})
	assert.True(t, Same(node(t, base), untouched), "the base is not changed")
}

func TestSame(t *testing.T) {
	assert.True(t, Same(node(t, `{"a":1,"b":[true,null,"x"]}`), node(t, `{"b":[true,null,"x"],"a":1.0}`)))
	for _, other := range []string{`{"a":2,"b":[true,null,"x"]}`, `{"a":1,"b":[false,null,"x"]}`, `{"a":1,"b":[true,null,"y"]}`, `{"a":1,"b":[true,null]}`, `{"a":1}`, `{"a":1,"c":[true,null,"x"]}`, `{"a":"1","b":[true,null,"x"]}`} {
		assert.False(t, Same(node(t, `{"a":1,"b":[true,null,"x"]}`), node(t, other)), other)
	}
}

// A patch worked in twice does what it does once, but for what it removes.
func TestMergingTwice(t *testing.T) {
	text := rapid.SampledFrom([]string{`{"a":1}`, `{"s":[{"id":"x","v":2}]}`, `{"s":[{"id":"y"},{"id":"n","v":1}]}`, `{"s":{"x":{"v":5}}}`, `{"b":{"c":{"d":[1,2]}}}`, `{"s":[]}`, `[]`})
	rapid.Check(t, func(t *rapid.T) {
		base, patch := `{"a":0,"s":[{"id":"x","v":1},{"id":"y"}],"b":{"c":3}}`, text.Draw(t, "patch")
		once, _ := merged(t, base, patch)
		twice := Merge(once, node(t, patch), func(string, string, string) {})
		assert.True(t, Same(once, &twice))
	})
}

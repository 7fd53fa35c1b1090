package wire

import (
	"encoding/json"
	"fmt"
	"net/url"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/fault"
)

type form interface{ kind() string }

type round struct {
	RadiusM float64 `json:"radius_m"`
}

func (*round) kind() string { return "round" }

type document struct {
	Name    string             `json:"name"`
	Path    string             `json:"path" most:"6000"`
	SpanM   float64            `json:"span_m"`
	Skin    *float64           `json:"skin_mm"`
	Coats   int                `json:"coats"`
	Mask    *bool              `json:"mask"`
	Form    form               `json:"form"`
	Points  [][2]float64       `json:"points" unit:"m"`
	Price   *decimal.Decimal   `json:"price"`
	Inner   []inner            `json:"inner"`
	Mix     map[string]float64 `json:"mix"`
	HaackC  float64            `json:"haack_c" unit:""`
	Percent float64            `json:"share_percent"`
}

type inner struct {
	ID    string `json:"id"`
	Count int    `json:"count"`
	Form  form   `wire:"inline"`
}

func (i *inner) Defaults() { i.Count = 1 }

func unions() Unions {
	u := Unions{}
	Add[form](u, Union{Key: "kind", Kinds: []string{"round"}, New: func(kind string) (any, bool) { return &round{}, kind == "round" }})
	return u
}

func read(t *testing.T, text string) (document, []fault.Fault, map[string]Range) {
	t.Helper()
	var faults fault.List
	node, err := Parse([]byte(text), &faults)
	require.NoError(t, err)
	d := Decoder{Unions: unions(), Faults: &faults}
	var doc document
	d.Decode(node, &doc)
	var list []fault.Fault
	if err, bad := faults.Err().(*fault.Error); bad {
		list = err.Faults
	}
	return doc, list, d.Ranges
}

func TestValuesArriveInSI(t *testing.T) {
	doc, faults, ranges := read(t, `{
		"name": "wing", "span_m": "12 ft 10 1/2 in", "skin_mm": "0.05 in", "coats": 2, "mask": false,
		"form": {"kind": "round", "radius_m": "50 cm"}, "points": [[0, 0], ["3 ft", 1]], "price": "140.00",
		"inner": [{"id": "a", "kind": "round", "radius_m": 2}], "mix": {"base": 4, "hardener": 1},
		"haack_c": 0.3333, "share_percent": "12 %"}`)
	require.Empty(t, faults)
	assert.Empty(t, ranges)
	assert.Equal(t, 3.9243, doc.SpanM)
	assert.Equal(t, 1.27, *doc.Skin)
	assert.Equal(t, 2, doc.Coats)
	assert.False(t, *doc.Mask)
	assert.Equal(t, &round{RadiusM: 0.5}, doc.Form)
	assert.Equal(t, [2]float64{0.9144, 1}, doc.Points[1])
	assert.Equal(t, "140", doc.Price.String())
	assert.Equal(t, []inner{{ID: "a", Count: 1, Form: &round{RadiusM: 2}}}, doc.Inner)
	assert.Equal(t, map[string]float64{"base": 4, "hardener": 1}, doc.Mix)
	assert.Equal(t, 12.0, doc.Percent)
}

func TestARangeGivesItsLikelyValueAndIsKept(t *testing.T) {
	doc, faults, ranges := read(t, `{"span_m": {"low": "25 ft", "likely": 9, "high": 12, "distribution": "triangular"}, "price": {"low": 1, "likely": 2.5, "high": 4}}`)
	require.Empty(t, faults)
	assert.Equal(t, 9.0, doc.SpanM)
	assert.Equal(t, Range{Low: 7.62, Likely: 9, High: 12, Distribution: "triangular"}, ranges["/span_m"])
	assert.Equal(t, "2.5", doc.Price.String())
}

// Every fault of a document is found in one go, each at its pointer.
func TestFaults(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want map[string]string // pointer to code
	}{
		"unknown field":            {`{"spam_m": 1}`, map[string]string{"/spam_m": "unknown_field"}},
		"several at once":          {`{"spam_m": 1, "span_m": "x ft", "coats": 1.5, "mask": "yes"}`, map[string]string{"/spam_m": "unknown_field", "/span_m": "not_a_number", "/coats": "wrong_type", "/mask": "wrong_type"}},
		"text for a number":        {`{"span_m": "2"}`, map[string]string{"/span_m": "wrong_type"}},
		"text for a count":         {`{"coats": "2"}`, map[string]string{"/coats": "wrong_type"}},
		"wrong unit":               {`{"span_m": "35 psi"}`, map[string]string{"/span_m": "wrong_unit"}},
		"number beyond float64":    {`{"span_m": 1e400}`, map[string]string{"/span_m": "not_a_number"}},
		"not a number in text":     {`{"span_m": "NaN m"}`, map[string]string{"/span_m": "not_a_number"}},
		"unknown kind":             {`{"form": {"kind": "cube", "radius_m": 1}}`, map[string]string{"/form/kind": "unknown_kind"}},
		"kind missing":             {`{"form": {"radius_m": 1}}`, map[string]string{"/form/kind": "required"}},
		"field of another kind":    {`{"form": {"kind": "round", "width_m": 1}}`, map[string]string{"/form/width_m": "unknown_field"}},
		"name twice":               {`{"span_m": 1, "span_m": 2}`, map[string]string{"/span_m": "duplicate_name"}},
		"range upside down":        {`{"span_m": {"low": 3, "likely": 2, "high": 1}}`, map[string]string{"/span_m": "inconsistent"}},
		"range without likely":     {`{"span_m": {"low": 3, "high": 4}}`, map[string]string{"/span_m/likely": "required"}},
		"range with more":          {`{"span_m": {"low": 1, "likely": 2, "high": 3, "mode": 2}}`, map[string]string{"/span_m/mode": "unknown_field"}},
		"distribution unknown":     {`{"span_m": {"low": 1, "likely": 2, "high": 3, "distribution": "flat"}}`, map[string]string{"/span_m/distribution": "unknown_kind"}},
		"money with an exponent":   {`{"price": "1e9"}`, map[string]string{"/price": "not_a_number"}},
		"money of too many digits": {`{"price": "12345678901234567.00"}`, map[string]string{"/price": "not_a_number"}},
		"a list for an object":     {`{"form": []}`, map[string]string{"/form": "wrong_type"}},
		"an object for a list":     {`{"inner": {}}`, map[string]string{"/inner": "wrong_type"}},
		"null in a list":           {`{"inner": [null]}`, map[string]string{"/inner/0": "wrong_type"}},
		"point of three":           {`{"points": [[1,2,3]]}`, map[string]string{"/points/0": "wrong_type"}},
		"not an object":            {`[1]`, map[string]string{"": "wrong_type"}},
		"control character":        {`{"name": "a\u0000b"}`, map[string]string{"/name": "wrong_type"}},
		"long text":                {`{"name": "` + strings.Repeat("a", 5000) + `"}`, map[string]string{"/name": "too_long"}},
		"long text where it may":   {`{"path": "` + strings.Repeat("a", 6000) + `"}`, map[string]string{}},
		"too long even there":      {`{"path": "` + strings.Repeat("a", 6001) + `"}`, map[string]string{"/path": "too_long"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, faults, _ := read(t, c.text)
			got := map[string]string{}
			for _, f := range faults {
				got[f.Pointer] = f.Code
				assert.NotEmpty(t, f.Detail)
			}
			assert.Equal(t, c.want, got)
		})
	}
}

func TestNearMissesAreSuggested(t *testing.T) {
	_, faults, _ := read(t, `{"span": 1, "coat": 2}`)
	require.Len(t, faults, 2)
	assert.Contains(t, faults[0].Detail, "did you mean span_m?")
	assert.Contains(t, faults[1].Detail, "did you mean coats?")
}

func TestTextThatIsNoDocument(t *testing.T) {
	for name, text := range map[string]string{
		"empty": "", "cut": `{"span_m": 1`, "two": `{} {}`, "comma": `{"a": 1,}`, "word": `span`,
		"deep":    strings.Repeat("[", 100) + strings.Repeat("]", 100),
		"members": manyMembers(300),
		"utf-8":   "{\"name\": \"\xff\"}",
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Parse([]byte(text), &fault.List{})
			var syntax *SyntaxError
			require.ErrorAs(t, err, &syntax)
			assert.NotEmpty(t, syntax.Detail)
		})
	}
}

func manyMembers(n int) string {
	members := make([]string, n)
	for i := range members {
		members[i] = fmt.Sprintf(`"m%d":1`, i)
	}
	return "{" + strings.Join(members, ",") + "}"
}

func TestAQueryIsADocument(t *testing.T) {
	values, err := url.ParseQuery("span_m=12.5&skin_mm=0.05+in&coats=2&mask=true&mix=%7B%22base%22:4%7D&name=x")
	require.NoError(t, err)
	var faults fault.List
	var doc document
	d := Decoder{Unions: unions(), Faults: &faults}
	d.Decode(Query(values, &faults), &doc)
	require.NoError(t, faults.Err())
	assert.Equal(t, 12.5, doc.SpanM)
	assert.Equal(t, 1.27, *doc.Skin)
	assert.Equal(t, 2, doc.Coats)
	assert.True(t, *doc.Mask)
	assert.Equal(t, 4.0, doc.Mix["base"])

	twice, _ := url.ParseQuery("span_m=1&span_m=2")
	d.Decode(Query(twice, &faults), &doc)
	assert.Error(t, faults.Err())
}

// Whatever comes in, nothing panics, and what decodes without a fault is text
// that encoding/json accepts too.
func FuzzParseAndDecode(f *testing.F) {
	for _, seed := range []string{`{}`, `{"span_m": "12 ft 10 1/2 in"}`, `{"inner": [{"id":"a","kind":"round","radius_m":{"low":1,"likely":2,"high":3}}]}`,
		`{"points": [[0,0],["3 ft",1]]}`, `{"price":"1.50","mix":{"a":1}}`, `[[[[`, `{"a":{"a":{"a":null}}}`, `{"name":"\ud800"}`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var faults fault.List
		node, err := Parse(data, &faults)
		if err != nil {
			return
		}
		var doc document
		d := Decoder{Unions: unions(), Faults: &faults}
		d.Decode(node, &doc)
		if faults.Empty() && !json.Valid(data) {
			t.Fatalf("accepted %q, which is not JSON", data)
		}
	})
}

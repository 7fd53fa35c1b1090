package marking

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLetterRulesAreReadStrictly(t *testing.T) {
	const head = "rule,width,stroke,gap,group_gap,m_width,w_width,four_extra,source,mark,note\n"
	const good = "a,2/3,1/6,1/6,2/3,1,1,0,x,H,"
	for text, said := range map[string]string{
		"":                                    "columns",
		head + "a,2/0,1/6,1/6,2/3,1,1,0,x,H,": "no fraction",
		head + "a,-1,1/6,1/6,2/3,1,1,0,x,H,":  "no fraction",
		head + "a,2/3,1/6,1/6,2/3,1,1,0,,H,":  "missing",
		head + "a,2/3,1/6,1/6,2/3,1,1,0,x,Q,": "missing",
		head + "a,2/3,1/4,1/6,2/3,1,1,0,x,H,": "go together",
		head + "a,2/3,1/6,0,2/3,1,1,0,x,H,":   "go together",
		head + good + "\n" + good:             "given twice",
	} {
		_, err := readLetterRules(text)
		assert.ErrorContains(t, err, said, text)
	}
	_, err := readLetterRules(head + good)
	require.NoError(t, err)
	rules, err := letterRules()
	require.NoError(t, err)
	assert.Len(t, rules, 9)
	_, err = letterRuleOf("own")
	assert.Error(t, err)
}

func TestRatioSetsAreReadStrictly(t *testing.T) {
	const head = "ratio_set,ratios,source,mark,note\n"
	for text, said := range map[string]string{
		"": "columns", head + "a,1 x,s,H,": "invalid syntax", head + "a,2 1,s,H,": "do not increase", head + "a,1 2,,H,": "missing",
		head + "a,,s,H,": "missing", head + "a,1 2,s,H,\na,1 3,s,H,": "given twice",
	} {
		_, err := readRatioSets(text)
		assert.ErrorContains(t, err, said, text)
	}
	sets, err := ratioSets()
	require.NoError(t, err)
	assert.Len(t, sets, 7)
}

func TestFlagsAreReadStrictly(t *testing.T) {
	const head = "design,hoist,fly,colour,shape,numbers,source,mark,note\n"
	for text, said := range map[string]string{
		"": "columns",
		head + "a,0,2,red,rectangle,0 0 1 1,s,H,":                                                "no sizes",
		head + "a,1,2,,rectangle,0 0 1 1,s,H,":                                                   "missing",
		head + "a,1,2,red,blob,0 0 1 1,s,H,":                                                     "no shape",
		head + "a,1,2,red,rectangle,0 0 1,s,H,":                                                  "no shape",
		head + "a,1,2,red,polygon,0 0 1 x 1 1,s,H,":                                              "no number",
		head + "a,1,2,red,disc,0 0 1,s,H,\nb,1,1,red,disc,0 0 1,s,H,\na,1,2,red,disc,0 0 1,s,H,": "do not go together",
		head + "a,1,2,red,disc,0 0 1,s,H,\na,1,3,red,disc,0 0 1,s,H,":                            "do not go together",
	} {
		_, err := readFlags(text)
		assert.ErrorContains(t, err, said, text)
	}
	designs, err := flagDesigns()
	require.NoError(t, err)
	assert.Len(t, designs, 9)
}

func FuzzReadFlags(f *testing.F) {
	f.Add(flagsCSV)
	f.Add("design,hoist,fly,colour,shape,numbers,source,mark,note\na,1,2,red,stars,0 0 1 1 1e9 1e9 1,s,H,\n")
	f.Fuzz(func(t *testing.T, text string) {
		designs, err := readFlags(text)
		if err != nil {
			return
		}
		for _, d := range designs {
			require.NotEmpty(t, d.layers)
			require.Positive(t, d.hoist)
		}
	})
}

func FuzzReadLetterRules(f *testing.F) {
	f.Add(letterRulesCSV)
	f.Fuzz(func(t *testing.T, text string) {
		rules, err := readLetterRules(text)
		if err != nil {
			return
		}
		for _, r := range rules {
			require.Greater(t, r.width, 3*r.stroke)
		}
	})
}

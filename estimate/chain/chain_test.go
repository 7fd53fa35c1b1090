package chain

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestTheRulesLoadAndEachIsWhole(t *testing.T) {
	list, err := read(bytes.NewReader(table))
	require.NoError(t, err)
	require.NotEmpty(t, list)
	for _, r := range list {
		assert.Contains(t, []string{"read", "memory", "practice"}, r.Mark, r.Code)
	}
	for name, text := range map[string]string{
		"unknown column": "code,text,source,mark,extra\n", "no head": "",
		"empty source": "code,text,source,mark\na,t,,read\n",
		"code twice":   "code,text,source,mark\na,t,s,read\na,t,s,read\n",
		"ragged":       "code,text,source,mark\na,t\n",
	} {
		_, err := read(strings.NewReader(text))
		assert.Error(t, err, name)
	}
}

var (
	primer = Paint{ID: "primer", Role: "primer", Colour: "grey"}
	etch   = Paint{ID: "etch", Role: "etch_primer", Colour: "yellow"}
	white  = Paint{ID: "white", Role: "topcoat", Colour: "white", Gloss: true}
	orange = Paint{ID: "orange", Role: "topcoat", Colour: "orange", Gloss: true}
	blue   = Paint{ID: "blue", Role: "topcoat", Colour: "blue", Gloss: true}
	black  = Paint{ID: "black", Role: "topcoat", Colour: "black", Gloss: true}
	clear  = Paint{ID: "clear", Role: "clear", Colour: "clear", Gloss: true}
	bare   = Paint{ID: "plain"}
)

// acts makes a list of steps of one hour each: a word for the work, a paint for
// a coat.
func acts(list ...any) []Act {
	made := make([]Act, len(list))
	for i, one := range list {
		made[i] = Act{Step: string(rune('a' + i)), Place: i, Begin: float64(i), End: float64(i + 1)}
		switch x := one.(type) {
		case Work:
			made[i].Work = x
		case Paint:
			made[i].Work, made[i].Paints = Coat, []Paint{x}
		case []Paint:
			made[i].Work, made[i].Paints = Mark, x
		}
	}
	return made
}

// codes lists the findings as step:code, tests to make left out.
func codes(p Piece, list []Act) []string {
	found := []string{}
	for _, f := range Follow(p, list).Findings {
		if !f.Check {
			found = append(found, f.Step+":"+f.Code)
		}
	}
	return found
}

// Each chain is known good or bad to the trade (common practice; USAF TO 1-1-8
// for wash, treatment, primer, topcoat). A finding is step:code.
func TestChains(t *testing.T) {
	old := func(substrate string) Piece { return Piece{Substrate: substrate, OldPaint: true} }
	for name, c := range map[string]struct {
		piece Piece
		acts  []Act
		want  []string
	}{
		"the whole chain on aluminium":         {old("clad_aluminium"), acts(Wash, Blast, Protect, Wash, Pretreat, primer, white, orange, clear), nil},
		"aluminium not treated":                {old("aluminium"), acts(Blast, Wash, primer), []string{"c:bare_untreated"}},
		"an etch primer is a treatment":        {old("aluminium"), acts(Blast, Wash, etch, primer, white), nil},
		"steel is not treated":                 {old("steel"), acts(Blast, primer, white), nil},
		"etch primer alone":                    {old("steel"), acts(Blast, etch, white), []string{"c:etch_alone"}},
		"protective left under primer":         {old("steel"), acts(Blast, Protect, primer), []string{"c:protective_left"}},
		"protective left under treatment":      {old("aluminium"), acts(Blast, Wash, Protect, Pretreat, primer), []string{"d:protective_left"}},
		"protective blasted":                   {old("steel"), acts(Blast, Protect, Blast, primer), []string{"c:protective_blasted"}},
		"blast dust on aluminium":              {old("aluminium"), acts(Blast, Pretreat, primer), []string{"b:unwashed_blast"}},
		"stripper left":                        {old("steel"), acts(Strip, primer), []string{"b:unwashed_strip"}},
		"sanding dust left":                    {old("fibreglass"), acts(Wash, Scuff, white), []string{"c:unwashed_sand"}},
		"topcoat on bare metal":                {old("steel"), acts(Blast, white), []string{"b:topcoat_on_bare"}},
		"a mark on bare metal":                 {old("steel"), acts(Blast, []Paint{white, black}), []string{"b:topcoat_on_bare", "b:topcoat_on_bare"}},
		"a paint of unknown role on bare":      {old("steel"), acts(Blast, bare), []string{"b:role_unknown"}},
		"colour on primer":                     {old("steel"), acts(Blast, primer, orange), []string{"c:colour_without_white"}},
		"black hides primer":                   {old("steel"), acts(Blast, primer, black), nil},
		"orange over blue":                     {old("steel"), acts(Blast, primer, white, blue, orange), []string{"e:colour_over_colour"}},
		"a second coat of the same":            {old("steel"), acts(Blast, primer, white, orange, orange), nil},
		"a roundel on white":                   {old("steel"), acts(Blast, primer, white, []Paint{orange, white, blue}), nil},
		"marks leave the ground as it was":     {old("steel"), acts(Blast, primer, white, []Paint{blue}, orange), nil},
		"old paint painted over":               {old("steel"), acts(Wash, white), []string{"b:not_scuffed"}},
		"old paint scuffed":                    {old("steel"), acts(Scuff, Wash, white), nil},
		"treatment on old paint":               {old("aluminium"), acts(Scuff, Wash, Pretreat, white), []string{"c:treat_on_paint"}},
		"new paint taken off again":            {old("steel"), acts(Blast, primer, Sand, Wash, primer), []string{"c:strips_new"}},
		"nothing is known, nothing is claimed": {Piece{}, acts(Wash, orange, primer), nil},
	} {
		t.Run(name, func(t *testing.T) {
			assert.ElementsMatch(t, c.want, codes(c.piece, c.acts))
		})
	}
}

func TestResidueThatCorrodes(t *testing.T) {
	list := acts(Blast, primer)
	list[0].Corrosive = true
	assert.Equal(t, []string{"b:residue"}, codes(Piece{Substrate: "steel", OldPaint: true}, list))
	list = acts(Blast, Wash, primer)
	list[0].Corrosive = true
	assert.Empty(t, codes(Piece{Substrate: "steel", OldPaint: true}, list))
}

// Reference planning C18: blasted steel is primed preferably within 24 h.
// Reference planning C14: paint starts within 48 h of the treatment.
func TestWaitsAgainstTheirLimits(t *testing.T) {
	steel, light := Piece{Substrate: "steel", OldPaint: true}, Piece{Substrate: "aluminium", OldPaint: true}
	wait := func(p Piece, at int, hours float64, works ...any) []string {
		list := acts(works...)
		for i := at + 1; i < len(list); i++ {
			list[i].Begin, list[i].End = list[i].Begin-list[at].End+list[at].Begin+hours, list[i].End+hours
		}
		return codes(p, list)
	}
	assert.Empty(t, wait(steel, 0, 24, Blast, primer))
	assert.Equal(t, []string{"b:rust_wait"}, wait(steel, 0, 24.1, Blast, primer))
	assert.Empty(t, wait(light, 2, 48, Blast, Wash, Pretreat, primer))
	assert.Equal(t, []string{"d:treated_wait"}, wait(light, 2, 48.1, Blast, Wash, Pretreat, primer))
	assert.Empty(t, wait(steel, 1, 500, Blast, Protect, Wash, primer), "protected metal does not wait")
	assert.Empty(t, wait(light, 0, 500, Blast, Wash, Pretreat, primer), "no published limit for aluminium from blast to treatment")

	list := acts(Blast, primer)
	list[0].Starts, list[1].Starts = new(0.0), new(72.0)
	found := Follow(steel, list).Findings
	require.Len(t, found, 2)
	assert.Contains(t, found[1].Text, "waits 72 h by the dates")
	list[1].Starts = new(10.0)
	assert.Empty(t, codes(steel, list))
}

// Old paint that stays beside stripped metal shows under gloss, unless it was
// sanded after the stripping (common practice).
func TestStepEdgesUnderGloss(t *testing.T) {
	old := Piece{Substrate: "steel", OldPaint: true}
	all := acts(Strip, Wash, Scuff, Wash, primer, white)
	stripped := Follow(old, all)
	kept := Follow(old, []Act{all[1], all[3], all[4], all[5]})
	sanded := Follow(old, all[1:])
	f, found := StepEdges([]Trace{kept, stripped})
	require.True(t, found)
	assert.Equal(t, "f", f.Step)
	assert.Equal(t, "step_edges", f.Code)
	for name, pieces := range map[string][]Trace{
		"sanded out":   {sanded, stripped},
		"all stripped": {stripped, stripped},
		"none":         {kept, kept},
		"nothing":      nil,
		"primer only":  {Follow(old, all[:5]), Follow(old, []Act{all[1], all[4]})},
	} {
		_, found := StepEdges(pieces)
		assert.False(t, found, name)
	}
}

func TestTestsToMake(t *testing.T) {
	checks := func(p Piece, list []Act) []string {
		var found []string
		for _, f := range Follow(p, list).Findings {
			if f.Check {
				found = append(found, f.Step+":"+f.Code)
			}
		}
		return found
	}
	assert.Equal(t, []string{"c:water_break", "d:water_break"}, checks(Piece{Substrate: "aluminium", OldPaint: true}, acts(Wash, Blast, Wash, Pretreat, primer, Wash)))
	assert.Equal(t, []string{"a:blast_clean"}, checks(Piece{Substrate: "steel"}, acts(Blast, primer)))
}

// Whatever the order, nothing is said twice of one paint, every text is filled
// in, and a wash before every step never adds a finding about dust.
func TestAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := []any{Blast, Strip, Sand, Scuff, Wash, Protect, Pretreat, primer, etch, white, orange, blue, clear, bare, []Paint{white, orange}}
		list := acts(rapid.SliceOfN(rapid.SampledFrom(words), 0, 25).Draw(t, "acts")...)
		piece := Piece{Substrate: rapid.SampledFrom([]string{"", "steel", "aluminium", "fibreglass"}).Draw(t, "substrate"), OldPaint: rapid.Bool().Draw(t, "old")}
		for _, f := range Follow(piece, list).Findings {
			assert.NotContains(t, f.Text, "{")
			assert.NotEmpty(t, f.Source)
		}
		var washed []any
		for _, a := range list {
			washed = append(washed, Wash)
			if len(a.Paints) == 1 && a.Work == Coat {
				washed = append(washed, a.Paints[0])
			} else if a.Work != Mark {
				washed = append(washed, a.Work)
			}
		}
		for _, code := range codes(piece, acts(washed...)) {
			for _, dust := range []string{"unwashed", "residue", "protective"} {
				assert.NotContains(t, code, dust)
			}
		}
	})
}

package estimate

import (
	"slices"
	"strconv"
	"strings"

	"filmbuild/estimate/chain"
	"filmbuild/products"
)

// follow goes through the steps face by face and notes, at the step where it
// shows, each step that is missing before it and each test to make at its end.
// A face is followed whole, and each region on it by itself: what is done to the
// whole face is done to the region, and what is done to another region is not.
func (r *run) follow() {
	t := tracker{run: r, pieces: map[pieceKey]int{}, followed: map[string]chain.Trace{}}
	t.cut()
	t.history()
	t.tell()
}

// pieceKey is a face, or with a region (its index plus one) the part of the
// face that lies in it.
type pieceKey struct{ surface, face, region int }

type piece struct {
	pieceKey
	share float64
	acts  []int // indices into tracker.acts
	trace chain.Trace
}

type tracker struct {
	*run
	list     []piece
	pieces   map[pieceKey]int
	onFace   map[[2]int][]int // face -> its pieces
	acts     []chain.Act
	followed map[string]chain.Trace // alike pieces with the same acts are followed once
}

// cut makes the pieces: every face, and every part of one that a region names.
func (t *tracker) cut() {
	t.onFace = map[[2]int][]int{}
	for k := range t.surfaces {
		for f := range t.surfaces[k].faces {
			t.addPiece(pieceKey{k, f, 0}, 1)
		}
	}
	for i := range t.job.Regions {
		for _, p := range t.regionPatches(i) {
			if p.share < 1 {
				t.addPiece(pieceKey{p.surface, p.face, i + 1}, p.share)
			}
		}
	}
}

func (t *tracker) addPiece(key pieceKey, share float64) {
	t.pieces[key] = len(t.list)
	face := [2]int{key.surface, key.face}
	t.onFace[face] = append(t.onFace[face], len(t.list))
	t.list = append(t.list, piece{pieceKey: key, share: share})
}

// regionPatches resolves a region that was found sound before.
func (r *run) regionPatches(index int) []patch {
	before := r.picked
	sel, _ := r.choose([]string{r.job.Regions[index].ID}, "/regions/0")
	r.picked = before // counted when the steps chose it
	return sel.patches
}

// history gives every piece the acts that touch it. Steps are taken as done one
// after the other.
func (t *tracker) history() {
	clock := 0.0
	for i, step := range t.job.Steps {
		s := &t.estimate.Steps[i]
		b := step.base()
		act := chain.Act{Step: s.ID, Place: i, Begin: clock, End: clock + s.Hours/float64(max(1, b.Crew)), Starts: startH(b.Starts)}
		clock = act.End
		if mark, ok := step.(*Mark); ok {
			t.marks(mark, act)
			continue
		}
		if t.describe(step, &act) {
			t.acts = append(t.acts, act)
			t.touch(b.On, len(t.acts)-1, true)
		}
	}
}

// describe says what a step does to the surface; masking does nothing.
func (t *tracker) describe(step Step, act *chain.Act) bool {
	switch p := step.(type) {
	case *Blast:
		act.Work = chain.Blast
		media, _ := t.catalogue.Product(p.Media)
		act.Corrosive = media != nil && slices.Contains(media.Base().Hazards, "corrosive_residue")
	case *Strip:
		act.Work = chain.Strip
	case *Sand:
		act.Work = chain.Sand
		if p.Scuff {
			act.Work = chain.Scuff
		}
	case *Wash:
		act.Work = chain.Wash
	case *Protect:
		act.Work = chain.Protect
	case *Pretreat:
		act.Work = chain.Pretreat
	case *Coat:
		act.Work = chain.Coat
		if paint, ok := t.paintNamed(p.Product); ok {
			act.Paints = []chain.Paint{paint}
		}
	default:
		return false
	}
	return true
}

func (t *tracker) paintNamed(id string) (chain.Paint, bool) {
	p, _ := t.catalogue.Product(id)
	paint, ok := p.(*products.Paint)
	if !ok {
		return chain.Paint{}, false
	}
	return layer(paint), true
}

func layer(p *products.Paint) chain.Paint {
	return chain.Paint{ID: p.ID, Role: p.Role, Colour: p.Colour, Gloss: p.Gloss()}
}

// marks adds one act for every marking whose place is known, with the paints of
// its colours.
func (t *tracker) marks(step *Mark, act chain.Act) {
	act.Work = chain.Mark
	for _, id := range step.Markings {
		m := &t.job.Markings[t.markingIndex(id)]
		on := step.On
		if m.On != "" {
			on = []string{m.On}
		}
		if len(on) == 0 {
			continue
		}
		act.Paints = nil
		for _, c := range t.drawn[id].Painted {
			if paint, found := t.paintOf(step, c.Colour, "/steps/0"); found {
				act.Paints = append(act.Paints, layer(paint))
			}
		}
		t.acts = append(t.acts, act)
		t.touch(on, len(t.acts)-1, false)
	}
}

// touch gives an act to the pieces that names choose: to a whole face with all
// regions on it (where inside is set), or to the part in a region.
func (t *tracker) touch(names []string, act int, inside bool) {
	for _, name := range names {
		if k, found := t.regionAt[name]; found {
			for _, p := range t.regionPatches(k) {
				t.touchFace(p, k+1, act, inside)
			}
			continue
		}
		patches, _ := t.patchesOf(name, "/steps/0")
		for _, p := range patches {
			t.touchFace(p, 0, act, inside)
		}
	}
}

func (t *tracker) touchFace(p patch, region, act int, inside bool) {
	if p.share < 1 || !inside {
		if p.share == 1 {
			region = 0
		}
		k := t.pieces[pieceKey{p.surface, p.face, region}]
		t.list[k].acts = append(t.list[k].acts, act)
		return
	}
	for _, k := range t.onFace[[2]int{p.surface, p.face}] {
		t.list[k].acts = append(t.list[k].acts, act)
	}
}

// trace follows one piece, or takes what was found for one alike.
func (t *tracker) trace(p *piece) chain.Trace {
	comp := t.surfaces[p.surface].component
	var key strings.Builder
	key.WriteString(comp.Substrate)
	if comp.ExistingFilmUM > 0 {
		key.WriteByte('+')
	}
	acts := make([]chain.Act, len(p.acts))
	for i, a := range p.acts {
		acts[i] = t.acts[a]
		key.WriteByte(' ')
		key.WriteString(strconv.Itoa(a))
	}
	known, ok := t.followed[key.String()]
	if !ok {
		known = chain.Follow(chain.Piece{Substrate: comp.Substrate, OldPaint: comp.ExistingFilmUM > 0}, acts)
		t.followed[key.String()] = known
	}
	return known
}

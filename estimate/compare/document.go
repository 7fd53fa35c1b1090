package compare

import (
	"strconv"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
)

// MostVariants is how many variants one comparison may have.
const MostVariants = 20

// BaseID is the id of the base among the ways that are compared.
const BaseID = "base"

// Comparison is what is asked: a base job and its variants.
type Comparison struct {
	Name     string        `json:"name,omitempty" doc:"what is compared"`
	Note     string        `json:"note,omitempty" doc:"free text; not used in any figure"`
	BaseName string        `json:"base_name,omitempty" doc:"what people call the base job's way"`
	Base     *estimate.Job `json:"base" wire:"raw" doc:"the job that the variants differ from"`
	Variants []Variant     `json:"variants" doc:"the other ways, 1 to 20"`
}

// Variant is another way of doing the job.
type Variant struct {
	ID    string         `json:"id" doc:"short name"`
	Name  string         `json:"name,omitempty" doc:"what people call it"`
	Note  string         `json:"note,omitempty" doc:"free text; not used in any figure"`
	Patch map[string]any `json:"patch" wire:"raw" doc:"what differs from the base: objects are merged as in RFC 7396, null removes; elements of a list are matched by their id, given as a list of elements or as an object from id to element, in which null removes one; an element of a new id enters behind the one before it in the patch"`
}

// way is one job to work out.
type way struct {
	id, name string
	job      *estimate.Job
	read     *fault.List // of reading it
	prefix   string      // of its faults
}

// read reads a comparison and makes the jobs of its variants.
func read(reader *estimate.Reader, data []byte, faults *fault.List) (*Comparison, []way, error) {
	node, err := wire.Parse(data, faults)
	if err != nil {
		return nil, nil, err
	}
	c := &Comparison{}
	reader.Decode(node, c, faults)
	if faults.Has("") {
		return c, nil, nil
	}
	switch {
	case len(c.Variants) == 0 && !faults.HasBelow("/variants"):
		faults.Add("/variants", "required", "variants is empty; give at least one other way")
	case len(c.Variants) > MostVariants:
		faults.Addf("/variants", "too_many", "there are %d variants; the most is %d", len(c.Variants), MostVariants)
	}
	base, found := node.Member("base")
	if !found {
		faults.Add("/base", "required", "base is missing; give the job that the variants differ from")
		return c, nil, nil
	}
	ways := []way{wayOf(reader, BaseID, c.BaseName, base, "/base")}
	if len(c.Variants) > MostVariants {
		return c, ways, nil
	}
	variants, _ := node.Member("variants")
	seen := map[string]string{BaseID: "the base"}
	for i := range c.Variants {
		v, at := &c.Variants[i], "/variants/"+strconv.Itoa(i)
		named(v.ID, at, seen, faults)
		if i >= len(variants.Items()) {
			break
		}
		if job, ok := patched(base, &variants.Items()[i], at, faults); ok {
			ways = append(ways, wayOf(reader, v.ID, v.Name, job, at+"/patch"))
		}
	}
	return c, ways, nil
}

func wayOf(reader *estimate.Reader, id, name string, node *wire.Node, prefix string) way {
	list := &fault.List{}
	w := way{id: id, name: name, job: reader.JobOf(node, list), read: list, prefix: prefix}
	if w.name == "" {
		w.name = id
	}
	return w
}

// named notes an id that is missing or taken.
func named(id, at string, seen map[string]string, faults *fault.List) {
	before, twice := seen[id]
	switch {
	case id == "":
		faults.Add(at+"/id", "required", "id is missing; give a short name such as chemical")
	case len(id) > 80:
		faults.Add(at+"/id", "too_long", "id has more than 80 characters; give a short name, and the long one under name")
	case twice:
		faults.Addf(at+"/id", "duplicate_id", "id %q is taken by %s; every way must have its own", id, before)
	default:
		seen[id] = at
	}
}

// patched makes the document of a variant. ok is false where its patch is at
// fault; one that changes nothing is.
func patched(base, variant *wire.Node, at string, faults *fault.List) (job *wire.Node, ok bool) {
	patch, found := variant.Member("patch")
	switch {
	case !found:
		faults.Add(at+"/patch", "required", "patch is missing; give what the variant does otherwise than the base")
		return nil, false
	case patch.Type != wire.Object:
		faults.Add(at+"/patch", "wrong_type", "patch must be an object of what differs from the base")
		return nil, false
	}
	before := faults.HasBelow(at + "/patch")
	merged := wire.Merge(base, patch, faults.At(at+"/patch"))
	if !before && faults.HasBelow(at+"/patch") {
		return nil, false
	}
	if wire.Same(base, &merged) {
		faults.Add(at+"/patch", "inconsistent", "the patch changes nothing: the variant is the base; patch something, or leave the variant out")
		return nil, false
	}
	return &merged, true
}

package wire

import (
	"slices"
	"strconv"
)

// Merge returns a document with a patch worked in. Neither is changed.
//
// Objects are merged as RFC 7396 says: a member of the patch replaces or enters,
// null removes. Lists whose elements have ids are merged by id, element by
// element: the patch is a list of elements with id, or an object from id to
// element, in which null removes one. An element of a new id enters behind the
// one before it in the patch, at the end where there is none. Any other list is
// replaced whole. report tells of a patch that removes what is not there.
//
// Source: RFC 7396 section 2 for objects; the rule for lists is ours, because
// RFC 7396 knows none.
func Merge(base, patch *Node, report func(pointer, code, detail string)) Node {
	return merge(base, patch, "", report)
}

func merge(base, patch *Node, at string, report func(pointer, code, detail string)) Node {
	switch {
	case patch.Type == Object && base.Type == List && identified(base):
		return mergeKeyed(base, patch, at, report)
	case patch.Type == Object:
		return mergeObject(base, patch, at, report)
	case patch.Type == List && base.Type == List && len(patch.items) > 0 && identified(base) && identified(patch):
		return mergeList(base, patch, at, report)
	}
	return *patch
}

// identified reports whether a list's elements are objects with an id each.
func identified(list *Node) bool {
	return !slices.ContainsFunc(list.items, func(n Node) bool { return n.Type != Object || n.TextOf("id") == "" })
}

func mergeObject(base, patch *Node, at string, report func(pointer, code, detail string)) Node {
	merged := Node{Type: Object}
	if base.Type == Object {
		merged.members = slices.Clone(base.members)
	}
	for i := range patch.members {
		p := &patch.members[i]
		below := at + "/" + escape(p.name)
		k := slices.IndexFunc(merged.members, func(m member) bool { return m.name == p.name })
		switch {
		case p.value.Type == Null && k >= 0:
			merged.members = slices.Delete(merged.members, k, k+1)
		case p.value.Type == Null:
			report(below, "unknown_reference", "null removes "+shorten(p.name)+", which is not there; leave it out of the patch")
		case k >= 0:
			merged.members[k].value = merge(&merged.members[k].value, &p.value, below, report)
		default:
			merged.members = append(merged.members, member{p.name, merge(&Node{}, &p.value, below, report)})
		}
	}
	return merged
}

// mergeList merges a list of elements by their ids.
func mergeList(base, patch *Node, at string, report func(pointer, code, detail string)) Node {
	merged := Node{Type: List, items: slices.Clone(base.items)}
	behind := len(merged.items)
	for i := range patch.items {
		p := &patch.items[i]
		below := at + "/" + strconv.Itoa(i)
		k := merged.indexOf(p.TextOf("id"))
		if k >= 0 {
			merged.items[k] = merge(&merged.items[k], p, below, report)
			behind = k + 1
			continue
		}
		merged.items = slices.Insert(merged.items, behind, mergeObject(&Node{}, p, below, report))
		behind++
	}
	return merged
}

// mergeKeyed merges an object from id to element.
func mergeKeyed(base, patch *Node, at string, report func(pointer, code, detail string)) Node {
	merged := Node{Type: List, items: slices.Clone(base.items)}
	behind := len(merged.items)
	for i := range patch.members {
		p := &patch.members[i]
		below := at + "/" + escape(p.name)
		k := merged.indexOf(p.name)
		switch {
		case k >= 0 && p.value.Type == Null:
			merged.items = slices.Delete(merged.items, k, k+1)
			behind = k
		case k >= 0:
			merged.items[k] = merge(&merged.items[k], &p.value, below, report)
			behind = k + 1
		case p.value.Type == Object:
			entered := mergeObject(&Node{Type: Object, members: []member{{"id", Node{Type: Text, text: p.name}}}}, &p.value, below, report)
			merged.items = slices.Insert(merged.items, behind, entered)
			behind++
		default:
			report(below, "unknown_reference", "there is no element with the id "+strconv.Quote(shorten(p.name))+" to remove or change; a new one needs an object")
		}
	}
	return merged
}

func (n *Node) indexOf(id string) int {
	return slices.IndexFunc(n.items, func(item Node) bool { return item.TextOf("id") == id })
}

// Same reports whether two documents say the same. The order of members is of no
// account, and numbers are compared by value.
func Same(a, b *Node) bool {
	if a.Type != b.Type || len(a.members) != len(b.members) || len(a.items) != len(b.items) {
		return false
	}
	if a.Type == Number {
		x, errX := strconv.ParseFloat(a.text, 64)
		y, errY := strconv.ParseFloat(b.text, 64)
		return a.text == b.text || (errX == nil && errY == nil && x == y)
	}
	for i := range a.items {
		if !Same(&a.items[i], &b.items[i]) {
			return false
		}
	}
	for i := range a.members {
		other, found := b.Member(a.members[i].name)
		if !found || !Same(&a.members[i].value, other) {
			return false
		}
	}
	return a.text == b.text
}

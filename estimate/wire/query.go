package wire

import (
	"net/url"
	"sort"
	"strings"

	"filmbuild/estimate/fault"
)

// Query makes a document of a query string: every parameter is a member of one
// object. A value that starts like a list or an object is read as JSON;
// everything else is text in which a number may stand without its unit.
func Query(values url.Values, faults *fault.List) *Node {
	names := make([]string, 0, len(values))
	for name := range values {
		names = append(names, name)
	}
	sort.Strings(names)
	n := &Node{Type: Object}
	for _, name := range names {
		at := "/" + escape(name)
		if len(values[name]) > 1 {
			faults.Add(at, "duplicate_name", name+" is given more than once; a list is written as JSON: "+name+"=[1,2]")
			continue
		}
		n.members = append(n.members, member{name: name, value: queryValue(values[name][0], at, faults)})
	}
	return n
}

func queryValue(text, at string, faults *fault.List) Node {
	trimmed := strings.TrimSpace(text)
	if !strings.HasPrefix(trimmed, "[") && !strings.HasPrefix(trimmed, "{") {
		return Node{Type: Text, text: trimmed, bare: true}
	}
	var within fault.List
	value, err := Parse([]byte(trimmed), &within)
	if err != nil {
		faults.Add(at, "syntax", "the value is not JSON: "+err.Error())
		return Node{}
	}
	if err, ok := within.Err().(*fault.Error); ok {
		for _, f := range err.Faults {
			faults.Add(at+f.Pointer, f.Code, f.Detail)
		}
	}
	return *value
}

// Package wire reads a document from outside into plain Go structs, strictly:
// every fault at once, each at its JSON pointer.
//
// A document becomes a tree of nodes first (JSON text by Parse, a query string
// by Query), and Decode then fills structs from the tree by their json tags.
// A number may be given as a JSON number, as text with its own unit
// ("0.8 mil"), or as a range {"low", "likely", "high"}; the suffix of the
// field's name says what it becomes.
package wire

// Type is the JSON type of a node.
type Type uint8

// The JSON types.
const (
	Null Type = iota
	Bool
	Number
	Text
	List
	Object
)

func (t Type) String() string {
	return [...]string{"null", "true or false", "a number", "text", "a list", "an object"}[t]
}

// Node is one value of a document.
type Node struct {
	Type    Type
	text    string // a text's value, a number's literal, or "true"
	bare    bool   // from a query or a cell: all values are text there, and a number may stand without its unit
	items   []Node
	members []member
}

type member struct {
	name  string
	value Node
}

// Member returns the value of an object's member.
func (n *Node) Member(name string) (*Node, bool) {
	for i := range n.members {
		if n.members[i].name == name {
			return &n.members[i].value, true
		}
	}
	return nil, false
}

// TextOf returns the text of a member, and "" where it is absent or no text.
func (n *Node) TextOf(name string) string {
	if m, ok := n.Member(name); ok && m.Type == Text {
		return m.text
	}
	return ""
}

// Items returns the elements of a list; of anything else there are none.
func (n *Node) Items() []Node { return n.items }

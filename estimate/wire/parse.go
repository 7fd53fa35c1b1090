package wire

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"

	"filmbuild/estimate/fault"
)

// Depth is how deep lists and objects may stand inside each other.
const Depth = 24

// Width is how many members one object may have.
const Width = 200

// SyntaxError says that a text is not a JSON document at all, or one that no
// job can be: what is wrong, and where.
type SyntaxError struct {
	Pointer string
	Code    string
	Detail  string
}

func (e *SyntaxError) Error() string { return e.Detail }

// Parse reads one JSON document. The error is a *SyntaxError; names that stand
// twice in one object are noted in faults, and the first is taken.
func Parse(data []byte, faults *fault.List) (*Node, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, &SyntaxError{Code: "syntax", Detail: "the document is empty; send a JSON object"}
	}
	p := parser{in: jsontext.NewDecoder(bytes.NewReader(data), jsontext.AllowDuplicateNames(true)), faults: faults}
	root, err := p.value()
	if err == nil {
		if _, end := p.in.ReadToken(); end == nil {
			err = &SyntaxError{Code: "syntax", Detail: "more text follows the JSON document; send one document"}
		} else if !errors.Is(end, io.EOF) {
			err = syntax(data, end)
		}
		return &root, err
	}
	var known *SyntaxError
	if errors.As(err, &known) {
		return nil, known
	}
	return nil, syntax(data, err)
}

// syntax words an error of the JSON reader with line and column.
func syntax(data []byte, err error) *SyntaxError {
	var bad *jsontext.SyntacticError
	if errors.Is(err, io.ErrUnexpectedEOF) {
		return &SyntaxError{Code: "syntax", Detail: "the JSON document ends too early: a bracket, brace or quote is not closed"}
	}
	if !errors.As(err, &bad) {
		return &SyntaxError{Code: "syntax", Detail: "the text is not JSON: " + err.Error()}
	}
	before := data[:min(int(bad.ByteOffset), len(data))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := len(before) - bytes.LastIndexByte(before, '\n')
	reason := err.Error()
	if bad.Err != nil {
		reason = bad.Err.Error()
	}
	return &SyntaxError{Pointer: string(bad.JSONPointer), Code: "syntax",
		Detail: fmt.Sprintf("line %d, column %d is not JSON: %s", line, column, reason)}
}

// parser reads values onto two stacks, so that every list and every object gets
// exactly the room it needs; where it stands is written out for a fault only.
type parser struct {
	in      *jsontext.Decoder
	faults  *fault.List
	path    []place
	members []member
	items   []Node
}

// place is one step down: to the member of a name, or to an item of a list.
type place struct {
	name string
	item int // -1 for a member
}

func (p *parser) pointer() string {
	var out strings.Builder
	for _, step := range p.path {
		out.WriteByte('/')
		if step.item < 0 {
			out.WriteString(escape(step.name))
		} else {
			out.WriteString(strconv.Itoa(step.item))
		}
	}
	return out.String()
}

func (p *parser) value() (Node, error) {
	if len(p.path) > Depth {
		return Node{}, &SyntaxError{Pointer: p.pointer(), Code: "too_deep",
			Detail: fmt.Sprintf("lists and objects stand more than %d deep in each other; no job needs that", Depth)}
	}
	token, err := p.in.ReadToken()
	if err != nil {
		return Node{}, err
	}
	switch token.Kind() {
	case 'n':
		return Node{}, nil
	case 't', 'f':
		return Node{Type: Bool, text: token.String()}, nil
	case '"':
		return Node{Type: Text, text: token.String()}, nil
	case '0':
		return Node{Type: Number, text: token.String()}, nil
	case '[':
		return p.list()
	default:
		return p.object()
	}
}

func (p *parser) list() (Node, error) {
	first := len(p.items)
	for p.in.PeekKind() != ']' {
		p.path = append(p.path, place{item: len(p.items) - first})
		item, err := p.value()
		if err != nil {
			return Node{}, err
		}
		p.path = p.path[:len(p.path)-1]
		p.items = append(p.items, item)
	}
	n := Node{Type: List, items: slices.Clone(p.items[first:])}
	p.items = p.items[:first]
	_, err := p.in.ReadToken()
	return n, err
}

func (p *parser) object() (Node, error) {
	first := len(p.members)
	for p.in.PeekKind() != '}' {
		if len(p.members)-first == Width {
			return Node{}, &SyntaxError{Pointer: p.pointer(), Code: "too_many",
				Detail: fmt.Sprintf("an object has more than %d members; no job needs that", Width)}
		}
		token, err := p.in.ReadToken()
		if err != nil {
			return Node{}, err
		}
		name := token.String()
		p.path = append(p.path, place{name, -1})
		value, err := p.value()
		if err != nil {
			return Node{}, err
		}
		if slices.ContainsFunc(p.members[first:], func(m member) bool { return m.name == name }) {
			p.faults.Add(p.pointer(), "duplicate_name", name+" stands twice in one object; keep one of them")
		} else {
			p.members = append(p.members, member{name, value})
		}
		p.path = p.path[:len(p.path)-1]
	}
	n := Node{Type: Object, members: slices.Clone(p.members[first:])}
	p.members = p.members[:first]
	_, err := p.in.ReadToken()
	return n, err
}

// escape writes a name as a token of a JSON pointer (RFC 6901 section 3).
func escape(name string) string {
	if !strings.ContainsAny(name, "~/") {
		return name
	}
	return strings.NewReplacer("~", "~0", "/", "~1").Replace(name)
}

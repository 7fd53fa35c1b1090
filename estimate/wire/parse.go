package wire

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"

	"filmbuild/estimate/fault"
)

// Depth is how deep lists and objects may stand inside each other.
const Depth = 24

// Width is how many members one object may have.
const Width = 200

// usualMembers is about what an object of a job has; room for them is made at
// once.
const usualMembers = 8

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
	root, err := p.value("", 0)
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

type parser struct {
	in     *jsontext.Decoder
	faults *fault.List
}

func (p *parser) value(at string, depth int) (Node, error) {
	if depth > Depth {
		return Node{}, &SyntaxError{Pointer: at, Code: "too_deep",
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
		return p.list(at, depth)
	default:
		return p.object(at, depth)
	}
}

func (p *parser) list(at string, depth int) (Node, error) {
	n := Node{Type: List}
	for p.in.PeekKind() != ']' {
		item, err := p.value(at+"/"+strconv.Itoa(len(n.items)), depth+1)
		if err != nil {
			return n, err
		}
		n.items = append(n.items, item)
	}
	_, err := p.in.ReadToken()
	return n, err
}

func (p *parser) object(at string, depth int) (Node, error) {
	n := Node{Type: Object}
	for p.in.PeekKind() != '}' {
		if len(n.members) == Width {
			return n, &SyntaxError{Pointer: at, Code: "too_many",
				Detail: fmt.Sprintf("an object has more than %d members; no job needs that", Width)}
		}
		name, err := p.in.ReadToken()
		if err != nil {
			return n, err
		}
		m := member{name: name.String()}
		below := at + "/" + escape(m.name)
		if m.value, err = p.value(below, depth+1); err != nil {
			return n, err
		}
		if _, twice := n.Member(m.name); twice {
			p.faults.Add(below, "duplicate_name", m.name+" stands twice in one object; keep one of them")
			continue
		}
		if n.members == nil {
			n.members = make([]member, 0, usualMembers)
		}
		n.members = append(n.members, m)
	}
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

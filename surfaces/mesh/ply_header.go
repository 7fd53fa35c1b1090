package mesh

import (
	"bytes"
	"errors"
	"io"
)

// Limits on a PLY header; real ones have two elements of a dozen properties.
const (
	plyHeaderLines = 1000
	plyElements    = 50
	plyProperties  = 200
)

// plyKind is a type of number in a PLY file.
type plyKind struct {
	bytes  int
	float  bool
	signed bool
}

func plyKindOf(word []byte) (plyKind, bool) {
	switch string(word) {
	case "char", "int8":
		return plyKind{1, false, true}, true
	case "uchar", "uint8":
		return plyKind{1, false, false}, true
	case "short", "int16":
		return plyKind{2, false, true}, true
	case "ushort", "uint16":
		return plyKind{2, false, false}, true
	case "int", "int32":
		return plyKind{4, false, true}, true
	case "uint", "uint32":
		return plyKind{4, false, false}, true
	case "float", "float32":
		return plyKind{4, true, true}, true
	case "double", "float64":
		return plyKind{8, true, true}, true
	}
	return plyKind{}, false
}

// plyProperty is one value, or one list of values, of an element.
type plyProperty struct {
	name  string
	kind  plyKind
	list  bool
	count plyKind // of the length of a list
}

// plyElement is one table of a PLY file.
type plyElement struct {
	name       string
	count      int64
	properties []plyProperty
}

// property returns the position of a property by any of its names, or -1.
func (e plyElement) property(names ...string) int {
	for i, p := range e.properties {
		for _, name := range names {
			if p.name == name {
				return i
			}
		}
	}
	return -1
}

// plyHeader reads up to end_header.
func (r *reading) plyHeader(l *lines) (elements []plyElement, err error) {
	for {
		line, err := l.next()
		switch {
		case errors.Is(err, io.EOF):
			return nil, fault("truncated", l.at(), "the file ends inside the header; it has no end_header")
		case err != nil:
			return nil, err
		case l.number == 1 && string(bytes.TrimSpace(line)) != "ply":
			return nil, fault("wrong_format", l.at(), "a PLY file begins with the line ply, this one with %q", clip(line))
		case l.number > plyHeaderLines:
			return nil, fault("too_many", l.at(), "the header has more than %d lines", plyHeaderLines).counted(plyHeaderLines, l.number)
		}
		word, rest := cutWord(line)
		switch string(word) {
		case "end_header":
			if r.contents.Format == "" {
				return nil, fault("syntax", l.at(), "the header does not say its format; a line such as format ascii 1.0 is missing")
			}
			return elements, nil
		case "format":
			err = r.plyFormat(rest, l.at())
		case "element":
			elements, err = plyAddElement(elements, rest, l.at())
		case "property":
			err = plyAddProperty(elements, rest, l.at())
		case "", "ply", "comment", "obj_info":
		default:
			r.notes.add("unknown_statement", l.at(), "the header line %q is not known and was passed over", clip(line))
		}
		if err != nil {
			return nil, err
		}
	}
}

func (r *reading) plyFormat(rest []byte, at Place) error {
	word, _ := cutWord(rest)
	switch string(word) {
	case "ascii":
		r.contents.Format = FormatPLYText
	case "binary_little_endian":
		r.contents.Format = FormatPLYLittle
	case "binary_big_endian":
		r.contents.Format = FormatPLYBig
	default:
		return fault("wrong_format", at, "%q is not an encoding of PLY; they are ascii, binary_little_endian and binary_big_endian", clip(word))
	}
	return nil
}

func plyAddElement(elements []plyElement, rest []byte, at Place) ([]plyElement, error) {
	name, rest := cutWord(rest)
	number, _ := cutWord(rest)
	count, ok := whole(number)
	switch {
	case len(name) == 0 || !ok || count < 0:
		return nil, fault("syntax", at, "an element needs a name and a count, as in element vertex 8")
	case len(elements) == plyElements:
		return nil, fault("too_many", at, "the header has more than %d elements", plyElements).counted(plyElements, plyElements+1)
	case string(name) == "tristrips":
		return nil, fault("wrong_format", at, "triangle strips (element tristrips) are not read; export the mesh with faces")
	}
	for _, e := range elements {
		if e.name == string(name) {
			return nil, fault("syntax", at, "the element %s is declared twice", clip(name))
		}
	}
	return append(elements, plyElement{name: string(name), count: count}), nil
}

func plyAddProperty(elements []plyElement, rest []byte, at Place) error {
	if len(elements) == 0 {
		return fault("syntax", at, "a property stands before the first element")
	}
	e := &elements[len(elements)-1]
	if len(e.properties) == plyProperties {
		return fault("too_many", at, "the element %s has more than %d properties", e.name, plyProperties).counted(plyProperties, plyProperties+1)
	}
	var p plyProperty
	word, rest := cutWord(rest)
	if string(word) == "list" {
		p.list = true
		word, rest = cutWord(rest)
		var ok bool
		if p.count, ok = plyKindOf(word); !ok || p.count.float {
			return fault("syntax", at, "%q is not a whole type for the length of a list", clip(word))
		}
		word, rest = cutWord(rest)
	}
	var ok bool
	if p.kind, ok = plyKindOf(word); !ok {
		return fault("syntax", at, "%q is not a type of number in PLY", clip(word))
	}
	name, _ := cutWord(rest)
	if len(name) == 0 {
		return fault("syntax", at, "a property needs a name")
	}
	if e.property(string(name)) >= 0 {
		return fault("syntax", at, "the property %s of %s is declared twice", clip(name), e.name)
	}
	p.name = string(name)
	e.properties = append(e.properties, p)
	return nil
}

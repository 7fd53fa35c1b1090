package build

import (
	"fmt"
	"reflect"
	"strings"

	"filmbuild/estimate/wire"
)

// union returns a reference to the schema of an interface type: one of its
// kinds, told apart by the text in one member.
func (s *schemas) union(t reflect.Type, on side) (*object, error) {
	u, known := s.unions[t]
	if !known {
		return nil, fmt.Errorf("the kinds of %s are not known to the reader of jobs", t)
	}
	name, fresh := s.reserve(schemaKey{t, on})
	if !fresh {
		return ref(name), nil
	}
	doc, err := s.comments.ofType(t)
	if err != nil {
		return nil, err
	}
	schema, err := s.oneOf(name, doc, u, on, nil, nil)
	s.components.set(name, schema)
	return ref(name), err
}

// inlineUnion describes a struct among whose members stand those of one kind of
// figure, as a union of the kinds with the struct's own members in each.
func (s *schemas) inlineUnion(t reflect.Type, inline reflect.StructField, own []field, doc string) (*object, error) {
	u, known := s.unions[inline.Type]
	if !known {
		return nil, fmt.Errorf("the kinds of %s are not known to the reader of jobs", inline.Type)
	}
	outer := reflect.New(t)
	if d, ok := outer.Interface().(wire.Defaulter); ok {
		d.Defaults()
	}
	return s.oneOf(s.names[schemaKey{t, asked}], doc, u, asked, own, &outer)
}

// oneOf describes a union; own are members that every kind has besides, and
// outer the struct that holds them.
func (s *schemas) oneOf(name, doc string, u wire.Union, on side, own []field, outer *reflect.Value) (*object, error) {
	var list []any
	mapping := obj()
	for _, kind := range u.Kinds {
		part := name + title(camel(kind))
		s.components.set(part, nil)
		list = append(list, ref(part))
		mapping.set(kind, "#/components/schemas/"+part)
		schema, err := s.kind(u, kind, on)
		if err != nil {
			return nil, err
		}
		if outer != nil {
			if schema, err = s.withOwn(schema, u.Key, own, *outer); err != nil {
				return nil, err
			}
		}
		s.components.set(part, schema)
	}
	return obj().setUnlessEmpty("description", doc).set("oneOf", list).
		set("discriminator", obj("propertyName", u.Key, "mapping", mapping)), nil
}

// kind describes one kind of a union, its key first.
func (s *schemas) kind(u wire.Union, kind string, on side) (*object, error) {
	made, ok := u.New(kind)
	if !ok {
		return nil, fmt.Errorf("there is no %s %q after all", u.Key, kind)
	}
	value := reflect.ValueOf(made).Elem()
	fields, _, err := fieldsOf(value.Type())
	if err != nil {
		return nil, err
	}
	doc, err := s.comments.ofType(value.Type())
	if err != nil {
		return nil, err
	}
	needed := func(f field) bool { return mustBeGiven(f, value.FieldByIndex(f.Index)) }
	if checked, ok := made.(checker); ok {
		missing := missingOf(checked.Check)
		missing["/id"] = true // an id is checked by whoever holds the list
		needed = func(f field) bool { return !f.omitEmpty && missing["/"+f.name] }
	}
	schema, err := s.members(value, fields, on, doc, needed)
	if err != nil {
		return nil, err
	}
	properties := obj(u.Key, obj("type", "string", "const", kind))
	own := schema.get("properties").(*object)
	for _, name := range own.names {
		if name != u.Key {
			properties.set(name, own.get(name))
		}
	}
	return closedObject(doc, properties, requiredWith(schema, u.Key)), nil
}

// withOwn puts the members of the outer struct before those of the kind.
func (s *schemas) withOwn(kind *object, key string, own []field, outer reflect.Value) (*object, error) {
	needed := func(f field) bool { return mustBeGiven(f, outer.Elem().FieldByIndex(f.Index)) }
	schema, err := s.members(outer.Elem(), own, asked, "", needed)
	if err != nil {
		return nil, err
	}
	properties := schema.get("properties").(*object)
	inner := kind.get("properties").(*object)
	for _, name := range inner.names {
		properties.set(name, inner.get(name))
	}
	required := append(requiredOf(schema), requiredWith(kind, key)...)
	doc, _ := kind.get("description").(string)
	return closedObject(doc, properties, required), nil
}

func requiredOf(schema *object) []string {
	list, _ := schema.get("required").([]string)
	return list
}

// requiredWith lists what a kind requires, its key first and once.
func requiredWith(schema *object, key string) []string {
	list := []string{key}
	for _, name := range requiredOf(schema) {
		if name != key {
			list = append(list, name)
		}
	}
	return list
}

// checker is a value that reports its own faults.
type checker interface {
	Check(report func(pointer, code, detail string))
}

// missingOf asks the check of an empty value which members it misses.
func missingOf(check func(report func(pointer, code, detail string))) map[string]bool {
	missing := map[string]bool{}
	check(func(pointer, _, _ string) { missing[pointer] = true })
	return missing
}

// camel turns a wire word into one without underscores or dashes: star_and_bar
// into starAndBar.
func camel(word string) string {
	parts := strings.FieldsFunc(word, func(r rune) bool { return r == '_' || r == '-' })
	for i := range parts[1:] {
		parts[i+1] = title(parts[i+1])
	}
	return strings.Join(parts, "")
}

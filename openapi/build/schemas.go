package build

import (
	"fmt"
	"path"
	"reflect"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/wire"
)

// side tells whether a value is read or written: what is read may have numbers
// with units and ranges, what is written has plain numbers.
type side bool

const (
	asked    side = false
	answered side = true
)

// schemas gathers the component schemas, each Go type once for each side.
type schemas struct {
	components *object
	names      map[schemaKey]string
	owners     map[string]schemaKey // the same the other way round
	preset     map[schemaKey]string // names that are not the type's own
	unions     wire.Unions
	words      map[string][]string
	comments   *comments
}

type schemaKey struct {
	of   reflect.Type
	side side
}

func newSchemas(root string) (*schemas, error) {
	words, err := fixedWords()
	if err != nil {
		return nil, err
	}
	s := &schemas{components: numberSchemas(), names: map[schemaKey]string{}, owners: map[string]schemaKey{}, preset: map[schemaKey]string{},
		unions: estimate.Unions(), words: words, comments: newComments(root)}
	return s, nil
}

func ref(name string) *object { return obj("$ref", "#/components/schemas/"+name) }

// reserve names the component of a type and reports whether it is new. Types
// with the same name in different packages take the package's name in front;
// a type that is asked for and answered has a second, listed, form.
func (s *schemas) reserve(key schemaKey) (string, bool) {
	if name, known := s.names[key]; known {
		return name, false
	}
	name := title(key.of.Name())
	if wanted, preset := s.preset[key]; preset {
		name = wanted
	}
	taken, clash := s.owners[name]
	switch {
	case clash && taken.of == key.of:
		name = "Listed" + name
	case clash || s.components.get(name) != nil:
		name = title(path.Base(key.of.PkgPath())) + name
	}
	s.names[key], s.owners[name] = name, key
	s.components.set(name, nil) // keeps the place: parents stand before their parts
	return name, true
}

func title(word string) string { return strings.ToUpper(word[:1]) + word[1:] }

// call names the component of a type that has none yet.
func (s *schemas) call(key schemaKey, name string) error {
	if _, known := s.names[key]; known {
		return nil
	}
	if _, taken := s.owners[name]; taken || s.components.get(name) != nil {
		return fmt.Errorf("two types want the name %s", name)
	}
	s.preset[key] = name
	return nil
}

// component returns a reference to the schema of a struct type.
func (s *schemas) component(t reflect.Type, on side) (*object, error) {
	name, fresh := s.reserve(schemaKey{t, on})
	if !fresh {
		return ref(name), nil
	}
	schema, err := s.structure(t, on)
	if err != nil {
		return nil, err
	}
	s.components.set(name, schema)
	return ref(name), nil
}

// structure describes a struct type, or the union of its kinds where one of its
// fields is an inline union.
func (s *schemas) structure(t reflect.Type, on side) (*object, error) {
	fields, inline, err := fieldsOf(t)
	if err != nil {
		return nil, err
	}
	doc, err := s.comments.ofType(t)
	if err != nil {
		return nil, err
	}
	if inline != nil {
		return s.inlineUnion(t, *inline, fields, doc)
	}
	value := reflect.New(t)
	if d, ok := value.Interface().(wire.Defaulter); ok {
		d.Defaults()
	}
	needed := func(f field) bool {
		return mustBeGiven(f, value.Elem().FieldByIndex(f.Index)) || (f.Type.Kind() == reflect.Pointer && !f.omitEmpty)
	}
	return s.members(value.Elem(), fields, on, doc, needed)
}

// members describes an object with the fields of a struct; value is the struct
// with its defaults; needed tells which fields of an input must be given.
func (s *schemas) members(value reflect.Value, fields []field, on side, doc string, needed func(field) bool) (*object, error) {
	properties, required := obj(), []string{}
	for _, f := range fields {
		schema, err := s.property(f, value.FieldByIndex(f.Index), on)
		if err != nil {
			return nil, fmt.Errorf("%s.%s: %w", f.owner, f.Name, err)
		}
		properties.set(f.name, schema)
		if (on == answered && !f.omitEmpty) || (on == asked && needed(f)) {
			required = append(required, f.name)
		}
	}
	return closedObject(doc, properties, required), nil
}

func closedObject(doc string, properties *object, required []string) *object {
	schema := obj("type", "object").setUnlessEmpty("description", doc).set("properties", properties)
	if len(required) > 0 {
		schema.set("required", required)
	}
	return schema.set("additionalProperties", false)
}

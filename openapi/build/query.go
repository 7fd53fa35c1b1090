package build

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// query turns the schema of an input into query parameters, in its order. Of a
// union the members of all kinds are parameters, each saying whose it is.
func (c *calculations) query(input *object, example shown) ([]any, error) {
	var values map[string]json.RawMessage
	if err := json.Unmarshal(example.Input, &values); err != nil {
		return nil, err
	}
	merged := obj()
	kinds := c.kindsOf(input)
	for _, k := range kinds {
		required := requiredOf(k.schema)
		properties := k.schema.get("properties").(*object)
		for _, name := range properties.names {
			p, _ := merged.get(name).(*parameter)
			if p == nil {
				p = &parameter{name: name}
				merged.set(name, p)
			}
			p.forms = append(p.forms, form{kind: k.name, schema: properties.get(name).(*object)})
			if slices.Contains(required, name) {
				p.required++
			}
		}
	}
	var list []any
	for _, name := range merged.names {
		p := merged.get(name).(*parameter)
		one, err := p.object(len(kinds), values[name])
		if err != nil {
			return nil, fmt.Errorf("parameter %s: %w", name, err)
		}
		list = append(list, one)
	}
	return append(list, fieldParameter(example.Field)), nil
}

type kindSchema struct {
	name   string
	schema *object
}

// kindsOf returns the kinds of a union, or the one schema itself.
func (c *calculations) kindsOf(input *object) []kindSchema {
	schema := c.resolve(input)
	mapping, union := schema.get("discriminator").(*object)
	if !union {
		return []kindSchema{{"", schema}}
	}
	var kinds []kindSchema
	targets := mapping.get("mapping").(*object)
	for _, name := range targets.names {
		kinds = append(kinds, kindSchema{name, c.resolve(obj("$ref", targets.get(name)))})
	}
	return kinds
}

func (c *calculations) resolve(reference *object) *object {
	name := strings.TrimPrefix(reference.get("$ref").(string), "#/components/schemas/")
	return c.schemas.components.get(name).(*object)
}

// parameter is one name in a query, with the form it has in each kind.
type parameter struct {
	name     string
	forms    []form
	required int // in how many kinds
}

type form struct {
	kind   string
	schema *object
}

func (p *parameter) object(kinds int, example json.RawMessage) (*object, error) {
	out := obj("name", p.name, "in", "query").setUnlessEmpty("description", p.description(kinds))
	if p.required == kinds {
		out.set("required", true)
	}
	schema, whole := p.schema()
	if whole { // a list or an object is written as JSON
		content := obj("schema", schema)
		if example != nil {
			content.set("example", example)
		}
		return out.set("content", obj("application/json", content)), nil
	}
	out.set("schema", schema)
	if example != nil {
		out.set("example", example)
	}
	return out, nil
}

// description is the text of the field with its unit and limits; where kinds
// differ it says so kind by kind.
func (p *parameter) description(kinds int) string {
	var texts []string
	of := map[string][]string{}
	for _, f := range p.forms {
		text := described(f.schema)
		if of[text] == nil {
			texts = append(texts, text)
		}
		of[text] = append(of[text], f.kind)
	}
	for i, text := range texts {
		if named := of[text]; len(named) < kinds && text != "" {
			texts[i] = "of " + strings.Join(named, ", ") + ": " + text
		}
	}
	return strings.Join(texts, ". ")
}

func described(schema *object) string {
	text, _ := schema.get("description").(string)
	if limits, _ := schema.get("x-limits").(string); limits != "" {
		text += "; " + limits
	} else if unit, _ := schema.get("x-unit").(string); unit != "" {
		text += "; in " + unit
	}
	return text
}

// schema is what the parameter's text may be, and whether it is JSON. Where
// kinds differ in their limits none are told here; the description has them.
func (p *parameter) schema() (schema *object, whole bool) {
	first := p.forms[0].schema
	if kind, ok := first.get("const").(string); ok {
		words := []string{kind}
		for _, f := range p.forms[1:] {
			words = append(words, f.schema.get("const").(string))
		}
		return obj("type", "string", "enum", words), false
	}
	schema = queryForm(first)
	if schema == nil {
		return first, true
	}
	for _, keyword := range []string{"x-unit", "minimum", "exclusiveMinimum", "maximum", "exclusiveMaximum", "x-limits", "enum", "default"} {
		same := first.get(keyword) != nil
		for _, f := range p.forms {
			same = same && fmt.Sprint(f.schema.get(keyword)) == fmt.Sprint(first.get(keyword))
		}
		if same {
			schema.set(keyword, first.get(keyword))
		}
	}
	return schema, false
}

// queryForm is the form that a field's value has in a query, nil for a list or
// an object. A number may carry its unit there.
func queryForm(schema *object) *object {
	switch schema.get("$ref") {
	case "#/components/schemas/Quantity", "#/components/schemas/Number", "#/components/schemas/Money":
		return obj("anyOf", oneTypeOf("number", "string"))
	case "#/components/schemas/Count":
		return obj("type", "integer")
	}
	switch kind := schema.get("type"); kind {
	case "string", "boolean":
		return obj("type", kind)
	}
	return nil
}

func fieldParameter(example string) *object {
	return obj("name", "field", "in", "query",
		"description", "answer one value only: its name in the answer, or names and indexes joined by slashes. It comes as bare text unless Accept asks for JSON",
		"schema", obj("type", "string"), "example", example)
}

// layerParameter describes the layers of a drawing.
func layerParameter(layers []string) *object {
	return obj("name", "layer", "in", "query", "description", "of the drawing; only where Accept asks for image/svg+xml",
		"schema", obj("type", "string", "enum", layers, "default", layers[0]))
}

// unitsParameter describes the units of a drawing.
func unitsParameter() *object {
	return obj("name", "units", "in", "query", "description", "of the dimensions in a drawing; only where Accept asks for image/svg+xml",
		"schema", obj("type", "string", "enum", []any{"si", "us"}, "default", "si"))
}

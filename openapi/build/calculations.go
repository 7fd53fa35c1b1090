package build

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/calculate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/products"
)

// shown is an input of a calculator that the document shows, and the value of
// the answer that a spreadsheet would ask for.
type shown struct {
	Field string          `json:"field"`
	Input json.RawMessage `json:"input"`
}

//go:embed calculations.json
var shownText []byte

// calculations describes the two operations of every calculator, from the list
// that the routes are made of.
type calculations struct {
	schemas   *schemas
	catalogue *products.Catalogue
	shown     map[string]shown
}

func newCalculations(s *schemas) (*calculations, error) {
	c := &calculations{schemas: s}
	if err := json.Unmarshal(shownText, &c.shown); err != nil {
		return nil, fmt.Errorf("calculations.json: %w", err)
	}
	for name := range c.shown {
		if _, known := calculate.Find(name); !known {
			return nil, fmt.Errorf("calculations.json shows %q, which is no calculator", name)
		}
	}
	var err error
	c.catalogue, err = products.Load()
	return c, err
}

// path describes one calculator.
func (c *calculations) path(calculator calculate.Calculator) (*object, error) {
	example, known := c.shown[calculator.Name]
	if !known {
		return nil, fmt.Errorf("calculations.json shows no input of %s", calculator.Name)
	}
	answer, err := c.answer(calculator, example)
	if err != nil {
		return nil, err
	}
	input, err := c.input(calculator)
	if err != nil {
		return nil, err
	}
	query, err := c.query(input, example)
	if err != nil {
		return nil, err
	}
	_, draws := calculator.New().(calculate.Drawer)
	beside := []any{fieldParameter(example.Field)}
	if draws {
		query, beside = append(query, unitsParameter()), append(beside, unitsParameter())
	}
	if layered, ok := calculator.New().(calculate.Layered); ok {
		query, beside = append(query, layerParameter(layered.Layers())), append(beside, layerParameter(layered.Layers()))
	}
	get := c.operation("GET", calculator).set("parameters", query).
		set("responses", responses(answer, draws, 400, 406, 422, 500))
	post := c.operation("POST", calculator).set("parameters", beside).
		set("requestBody", obj("required", true, "content", obj("application/json", obj("schema", input, "example", example.Input)))).
		set("responses", responses(answer, draws, 400, 406, 413, 415, 422, 500))
	return obj("get", get, "post", post), nil
}

func (c *calculations) operation(method string, calculator calculate.Calculator) *object {
	with := " Fields as query parameters."
	if method == "POST" {
		with = " Fields as JSON body."
	}
	return obj("operationId", operationID(method, "/v1/calculations/"+calculator.Name), "tags", []string{"calculations"},
		"summary", strings.TrimSuffix(calculator.Doc, "."), "description", calculator.Doc+with)
}

// answer describes what a calculator answers, by asking it.
func (c *calculations) answer(calculator calculate.Calculator, example shown) (*object, error) {
	var faults fault.List
	node, err := wire.Parse(example.Input, &faults)
	if err != nil {
		return nil, fmt.Errorf("calculations.json: %s: %w", calculator.Name, err)
	}
	in := calculator.New()
	estimate.NewReader(nil).Decode(node, in.Fields(), &faults)
	in.Check(c.catalogue, &faults)
	if err := faults.Err(); err != nil {
		return nil, fmt.Errorf("calculations.json: %s: %w", calculator.Name, err)
	}
	answer, err := in.Answer()
	if err != nil {
		return nil, fmt.Errorf("calculations.json: %s: %w", calculator.Name, err)
	}
	t := reflect.TypeOf(answer)
	if err := c.schemas.call(schemaKey{t, answered}, title(camel(calculator.Name))+"Answer"); err != nil {
		return nil, err
	}
	return c.schemas.component(t, answered)
}

// input returns a reference to the schema of a calculator's input.
func (c *calculations) input(calculator calculate.Calculator) (*object, error) {
	in := calculator.New()
	value := reflect.ValueOf(in.Fields()).Elem()
	fields, inline, err := fieldsOf(value.Type())
	if err != nil {
		return nil, err
	}
	if inline != nil { // what an answer does not rest on, as the count of a marking, is not offered
		return c.schemas.union(inline.Type, asked)
	}
	name := title(camel(calculator.Name)) + "Input"
	c.schemas.components.set(name, nil)
	missing := missingOf(func(report func(pointer, code, detail string)) {
		var faults fault.List
		in.Check(c.catalogue, &faults)
		if err, bad := faults.Err().(*fault.Error); bad {
			for _, f := range err.Faults {
				report(f.Pointer, f.Code, f.Detail)
			}
		}
	})
	schema, err := c.schemas.members(value, fields, asked, calculator.Doc, func(f field) bool { return !f.omitEmpty && missing["/"+f.name] })
	c.schemas.components.set(name, schema)
	return ref(name), err
}

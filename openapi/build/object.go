package build

import (
	"bytes"
	"encoding/json"
)

// object is a JSON object that keeps its members in the order they were set,
// so that fields stand in the document as they stand in the source.
type object struct {
	names  []string
	values map[string]any
}

// obj makes an object of names and values by turns.
func obj(pairs ...any) *object {
	o := &object{values: map[string]any{}}
	for i := 0; i+1 < len(pairs); i += 2 {
		o.set(pairs[i].(string), pairs[i+1])
	}
	return o
}

// set sets a member; a member that is set again keeps its place.
func (o *object) set(name string, value any) *object {
	if _, known := o.values[name]; !known {
		o.names = append(o.names, name)
	}
	o.values[name] = value
	return o
}

// setUnlessEmpty sets a member that has something to say.
func (o *object) setUnlessEmpty(name, text string) *object {
	if text == "" {
		return o
	}
	return o.set(name, text)
}

func (o *object) get(name string) any { return o.values[name] }

// MarshalJSON writes the members in their order.
func (o *object) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	out.WriteByte('{')
	for i, name := range o.names {
		if i > 0 {
			out.WriteByte(',')
		}
		key, err := encode(name)
		if err != nil {
			return nil, err
		}
		value, err := encode(o.values[name])
		if err != nil {
			return nil, err
		}
		out.Write(key)
		out.WriteByte(':')
		out.Write(value)
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}

// encode writes JSON with < > & as they are: the document is no HTML.
func encode(value any) ([]byte, error) {
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(value); err != nil {
		return nil, err
	}
	return bytes.TrimSpace(out.Bytes()), nil
}

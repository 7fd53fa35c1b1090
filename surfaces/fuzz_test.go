package surfaces

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"reflect"
	"testing"
)

// bits deals out the bytes of a fuzz input.
type bits []byte

func (b *bits) next() byte {
	if len(*b) == 0 {
		return 0
	}
	first := (*b)[0]
	*b = (*b)[1:]
	return first
}

// number is any float64 at all, or, more often, one of everyday size.
func (b *bits) number() float64 {
	var raw [8]byte
	switch form := b.next(); {
	case form < 16:
		for i := range raw {
			raw[i] = b.next()
		}
		return math.Float64frombits(binary.LittleEndian.Uint64(raw[:]))
	case form < 32:
		return float64(int8(b.next()))
	}
	return float64(b.next()) * float64(b.next()) / 1000
}

// fill sets every field of a struct from the input.
func (b *bits) fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() { // what a mesh came to is handed over, not given
				b.fill(v.Field(i))
			}
		}
	case reflect.Pointer:
		if b.next()%3 != 0 {
			v.Set(reflect.New(v.Type().Elem()))
			b.fill(v.Elem())
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), int(b.next()%6), 6))
		for i := range v.Len() {
			b.fill(v.Index(i))
		}
	case reflect.Array:
		for i := range v.Len() {
			b.fill(v.Index(i))
		}
	case reflect.Float64:
		v.SetFloat(b.number())
	case reflect.Int:
		v.SetInt(int64(b.next() % 4))
	case reflect.String:
		words := []string{
			"", "naca", "biconvex", "double_wedge", "elliptic", "flat", "open", "closed", "capped", "point", "whole", "half",
			"tangent_ogive", "secant_ogive", "haack", "paraboloid", "power", "hemisphere", "ellipsoidal", "torispherical",
			"i", "channel", "angle", "round_tube", "rect_tube", "round", "sine", "arc", "trapezoid",
		}
		if w := int(b.next()); w < 2*len(words) {
			v.SetString(words[w%len(words)])
		}
	}
}

// Any numbers that pass Check give finite areas and lengths that are not
// negative, and a working that can be written as JSON.
func FuzzWhatPassesCheckCanBeMeasured(f *testing.F) {
	for i := range len(Kinds()) {
		f.Add(byte(i), []byte("\x20\x01\xff\x20\x40\x90\x20\x30\x80\x20\x10\x80\x01\x20\x50\x50\x01\x20\x55\x05"))
	}
	// A wing near the limits: pointed, thin, swept.
	f.Add(byte(8), []byte{200, 10, 100, 0, 200, 0, 0, 200, 20, 100, 20, 84, 1, 200, 1, 1, 0, 1, 200, 0, 0, 0, 255, 255})
	f.Fuzz(func(t *testing.T, which byte, data []byte) {
		list := Kinds()
		s, _ := New(list[int(which)%len(list)].Name)
		input := bits(data)
		input.fill(reflect.ValueOf(s).Elem())
		m, err := Measure(s)
		if err != nil {
			return
		}
		for _, face := range m.Faces {
			if !(face.AreaM2 >= 0) || math.IsInf(face.AreaM2, 0) {
				t.Fatalf("%s is %v m² on %+v", face.Name, face.AreaM2, s)
			}
		}
		for _, edge := range m.Edges {
			if !(edge.LengthM >= 0) || math.IsInf(edge.LengthM, 0) {
				t.Fatalf("%v is %v m on %+v", edge.Between, edge.LengthM, s)
			}
		}
		if len(m.Faces) == 0 || !(m.AccuracyPercent > 0) {
			t.Fatalf("nothing measured on %+v", s)
		}
		if _, err := json.Marshal(m); err != nil {
			t.Fatalf("%v on %+v", err, s)
		}
	})
}

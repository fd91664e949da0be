package plan

import (
	"bytes"
	"encoding"
	"encoding/json"
	"reflect"
	"strings"

	"example.com/drawbar/units"
)

// digitsInJSON is how many significant digits a quantity has in JSON.
const digitsInJSON = 6

// JSON returns the plan as indented JSON, of the shape that the package
// documentation states.
func (p Plan) JSON() ([]byte, error) { return indented(p) }

// JSONWithWorking returns what [Plan.JSON] does with one name more, "working":
// the sheets behind the numbers, step by step.
func (p Plan) JSONWithWorking() ([]byte, error) {
	return indented(struct {
		Plan
		Working []sheetLine `json:"working"`
	}{p, sheetLines(p.sheets)})
}

// MarshalJSON returns the plan in the shape of [Plan.JSON], not indented, so
// that a plan inside of something else has it too.
func (p Plan) MarshalJSON() ([]byte, error) {
	type plain Plan // without this method
	var b bytes.Buffer
	err := appendJSON(&b, reflect.ValueOf(plain(p)), "")
	return b.Bytes(), err
}

func indented(v any) ([]byte, error) {
	var raw, b bytes.Buffer
	if err := appendJSON(&raw, reflect.ValueOf(v), ""); err != nil {
		return nil, err
	}
	err := json.Indent(&b, raw.Bytes(), "", "  ")
	b.WriteByte('\n')
	return b.Bytes(), err
}

// appendJSON appends v. Package encoding/json would write a quantity with all
// the digits that it takes to read back the very float64, in whatever unit
// that needs, and an empty list as null.
func appendJSON(b *bytes.Buffer, v reflect.Value, unit string) error {
	if isOpt(v) {
		return appendJSON(b, v.MethodByName("Get").Call(nil)[0], unit)
	}
	switch x := v.Interface().(type) {
	case units.Value:
		appendText(b, quantity(x, unit, digitsInJSON))
		return nil
	case encoding.TextMarshaler:
		text, err := x.MarshalText()
		appendText(b, string(text))
		return err
	}
	switch v.Kind() {
	case reflect.Pointer:
		return appendJSON(b, v.Elem(), unit)
	case reflect.Struct:
		b.WriteByte('{')
		err := appendFields(b, v)
		b.WriteByte('}')
		return err
	case reflect.Slice:
		b.WriteByte('[')
		for i := range v.Len() {
			if i > 0 {
				b.WriteByte(',')
			}
			if err := appendJSON(b, v.Index(i), unit); err != nil {
				return err
			}
		}
		b.WriteByte(']')
		return nil
	case reflect.String:
		appendText(b, v.String())
		return nil
	}
	data, err := json.Marshal(v.Interface())
	b.Write(data)
	return err
}

// isOpt reports whether v is a [units.Opt] of whatever it may be, which no type
// switch can ask.
func isOpt(v reflect.Value) bool {
	return v.Type().PkgPath() == reflect.TypeFor[units.Opt[bool]]().PkgPath() && strings.HasPrefix(v.Type().Name(), "Opt[")
}

// appendFields appends the fields of a struct, those of a struct inside of it
// without a name of its own as if they were its own.
func appendFields(b *bytes.Buffer, v reflect.Value) error {
	for i := range v.NumField() {
		field := v.Type().Field(i)
		name, options, _ := strings.Cut(field.Tag.Get("json"), ",")
		switch {
		case field.Anonymous:
			if err := appendFields(b, v.Field(i)); err != nil {
				return err
			}
			continue
		case !field.IsExported(), options == "omitzero" && isZero(v.Field(i)):
			continue
		}
		if b.Bytes()[b.Len()-1] != '{' {
			b.WriteByte(',')
		}
		appendText(b, name)
		b.WriteByte(':')
		if err := appendJSON(b, v.Field(i), field.Tag.Get("unit")); err != nil {
			return err
		}
	}
	return nil
}

// isZero is what omitzero asks.
func isZero(v reflect.Value) bool {
	if z, ok := v.Interface().(interface{ IsZero() bool }); ok {
		return z.IsZero()
	}
	return v.IsZero()
}

// appendText appends s as JSON, < and > as they are.
func appendText(b *bytes.Buffer, s string) {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	_ = e.Encode(s)         // any text can be written, and a Buffer takes it
	b.Truncate(b.Len() - 1) // the encoder ends the line
}

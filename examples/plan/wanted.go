package plan

import (
	"encoding"
	"errors"
	"reflect"
	"strings"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// kindOf says what a missing field of type t would be.
func kindOf(t reflect.Type) string {
	if isText(t) {
		return textOf(t)
	}
	switch t.Kind() {
	case reflect.Slice:
		return arrayNode.String()
	case reflect.Struct, reflect.Pointer:
		return objectNode.String()
	case reflect.Int:
		return aWhole
	}
	return stringNode.String()
}

// textOf says how a value of type t is written: with an example, or which
// words there are.
func textOf(t reflect.Type) string {
	v := reflect.New(t).Interface()
	if example := exampleOf(v); example != "" {
		return "text with a unit, such as \"" + example + "\""
	}
	if _, ok := v.(*loads.Clock); ok {
		return "text, such as \"18:30\""
	}
	// No word of any choice.
	var parse *units.ParseError
	if err := v.(encoding.TextUnmarshaler).UnmarshalText([]byte("?")); errors.As(err, &parse) {
		return reasonOf(parse)
	}
	return stringNode.String()
}

// reasonOf returns what text should be and why it is not.
func reasonOf(err *units.ParseError) string {
	return err.Want + ": " + strings.TrimPrefix(err.Reason, "want ")
}

// exampleOf returns how somebody may write a value of the type that v points
// to, and nothing for a choice of words.
func exampleOf(v any) string {
	switch v.(type) {
	case *units.Voltage, *units.Opt[units.Voltage]:
		return "12.8 V"
	case *units.Current, *units.Opt[units.Current]:
		return "30 A"
	case *units.Power, *units.Opt[units.Power]:
		return "60 W"
	case *units.ApparentPower, *units.Opt[units.ApparentPower]:
		return "1500 VA"
	case *units.Charge:
		return "100 Ah"
	case *units.Elapsed, *units.Opt[units.Elapsed]:
		return "4.5 h"
	case *units.Ratio, *units.Opt[units.Ratio]:
		return "90 %"
	case *units.Length, *units.Opt[units.Length]:
		return "12 ft"
	case *units.Opt[units.Area]:
		return "50 cm²"
	case *units.Opt[units.Resistance]:
		return "4 mΩ"
	case *units.Opt[units.PerKelvin]:
		return "-0.28 %/K"
	case *units.Opt[units.Angle]:
		return "41.8°"
	case *units.Irradiation:
		return "3.0 kWh/m²"
	case *units.Temperature:
		return "-22 °C"
	case *wire.Size, *units.Opt[wire.Size]:
		return "10 AWG"
	case *wire.Insulation:
		return "105 °C"
	}
	return ""
}

package loads

import "example.com/drawbar/units"

// A BusKind tells direct from alternating current. The zero value is not
// given.
type BusKind uint8

// The kinds of buses.
const (
	Direct      BusKind = iota + 1 // direct current: ampere-hours make sense
	Alternating                    // alternating current: volt-amperes matter
)

func busKinds() []string { return []string{"direct", "alternating"} }

// String returns "direct", "alternating" or "not given".
func (k BusKind) String() string { return word(busKinds(), uint8(k)) }

// MarshalText returns what String does, and empty text for the zero value; a
// value that is not defined is a [*units.RangeError].
func (k BusKind) MarshalText() ([]byte, error) {
	return marshalWord("loads.BusKind.MarshalText", "BusKind", busKinds(), uint8(k))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *BusKind) UnmarshalText(text []byte) error {
	i, err := unmarshalWord("a kind of bus", busKinds(), text)
	if err == nil {
		*k = BusKind(i)
	}
	return err
}

// A Bus is where loads are connected: a 12 V panel, the circuits behind an
// inverter, the main panel. Loads name it.
type Bus struct {
	Name    string        // not empty, and no other bus has it
	Kind    BusKind       // Direct or Alternating
	Voltage units.Voltage // nominal, > 0; effective for alternating current
}

// check returns all that is wrong with b.
func (b Bus) check(op string) faults {
	var f faults
	f.add(named(op, "Bus.Name", b.Name))
	if b.Kind != Direct && b.Kind != Alternating {
		f.add(&units.RangeError{Op: op, Field: "Bus.Kind", Value: b.Kind, Allowed: oneOf(busKinds())})
	}
	f.add(units.Above[units.Voltage](0).Check(op, "Bus.Voltage", b.Voltage))
	return f
}

package loads

import "example.com/drawbar/units"

// A Kind is how a load answers to another voltage than its nameplate's. The
// zero value is not given.
type Kind uint8

// The kinds of loads.
const (
	// Resistive: a heater, a filament lamp. Its current follows the voltage,
	// so its power falls with the square of it. Its power factor is 1.
	Resistive Kind = iota + 1
	// ConstantPower: a converter, a computer, anything with a regulated
	// supply. Its current rises as the voltage falls.
	ConstantPower
	// Motor: a running motor, which gives its pump or compressor the same
	// power at a lower voltage and takes the more current for it. What it
	// takes to start is not in this package.
	Motor
	// ConstantCurrent: an LED lamp with a current driver.
	ConstantCurrent
)

func kinds() []string { return []string{"resistive", "constant power", "motor", "constant current"} }

// String returns "resistive", "constant power", "motor", "constant current"
// or "not given".
func (k Kind) String() string { return word(kinds(), uint8(k)) }

// MarshalText returns what String does, and empty text for the zero value; a
// value that is not defined is a [*units.RangeError].
func (k Kind) MarshalText() ([]byte, error) {
	return marshalWord("loads.Kind.MarshalText", "Kind", kinds(), uint8(k))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *Kind) UnmarshalText(text []byte) error {
	i, err := unmarshalWord("a kind of load", kinds(), text)
	if err == nil {
		*k = Kind(i)
	}
	return err
}

// factor returns by how much the power of such a load changes when the
// voltage goes from one to another.
func (k Kind) factor(from, to units.Voltage) units.Ratio {
	r := units.RatioOf(to, from)
	switch k {
	case Resistive:
		return r * r
	case ConstantCurrent:
		return r
	}
	return 1
}

package wire

import "example.com/drawbar/units"

// Insulation is the temperature class of a conductor's insulation, or the
// rating of the terminals at its ends. The zero value is not given.
type Insulation uint8

const (
	// Insulation60 is rated 60 °C, as cable of Article 334 is used.
	Insulation60 Insulation = iota + 1
	// Insulation75 is rated 75 °C.
	Insulation75
	// Insulation90 is rated 90 °C.
	Insulation90
	// Insulation105 is rated 105 °C, as boat and primary vehicle cable is.
	Insulation105
)

// Temperature returns the rating; it is not given for the zero Insulation.
func (n Insulation) Temperature() units.Temperature {
	switch n {
	case Insulation60:
		return units.Celsius(60)
	case Insulation75:
		return units.Celsius(75)
	case Insulation90:
		return units.Celsius(90)
	case Insulation105:
		return units.Celsius(105)
	}
	return units.Temperature{}
}

// InsulationOf returns the class rated t, and whether there is one.
func InsulationOf(t units.Temperature) (n Insulation, ok bool) {
	for n := Insulation60; n <= Insulation105; n++ {
		if t.IsSet() && t.Compare(n.Temperature()) == 0 {
			return n, true
		}
	}
	return 0, false
}

// String returns "75 °C", or "not given".
func (n Insulation) String() string { return n.Temperature().String() }

// check returns a [*units.RangeError] if n is not a class.
func (n Insulation) check(op, field string) error {
	if n >= Insulation60 && n <= Insulation105 {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: n, Allowed: insulationRange{}}
}

// insulationRange says in words which classes there are.
type insulationRange struct{}

// String names the classes.
func (insulationRange) String() string { return "60, 75, 90 or 105 °C" }

// MarshalText returns what String does, and empty text for the zero value.
func (n Insulation) MarshalText() ([]byte, error) {
	if n == 0 {
		return []byte{}, nil
	}
	return []byte(n.String()), nil
}

// UnmarshalText reads what [ParseInsulation] reads, with the same errors,
// which leave n alone.
func (n *Insulation) UnmarshalText(text []byte) error {
	class, err := ParseInsulation(string(text))
	if err == nil {
		*n = class
	}
	return err
}

// ParseInsulation reads a temperature that is a class, such as "105 °C" or
// "221 °F". Every error has concrete type [*units.ParseError], or
// [*units.RangeError] below absolute zero.
func ParseInsulation(s string) (Insulation, error) {
	t, err := units.ParseTemperature(s)
	if err != nil {
		return 0, err
	}
	class, ok := InsulationOf(t)
	if !ok {
		return 0, &units.ParseError{Input: s, Want: "insulation class", Reason: "want " + insulationRange{}.String()}
	}
	return class, nil
}

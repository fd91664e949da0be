package wire

import "example.com/drawbar/units"

// Insulation is the temperature class of a conductor's insulation, or the
// rating of the terminals at its ends. Its numbers do not ascend with the
// temperature; [Insulation.Temperature] does. The zero value is not given.
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
	// Insulation80 is rated 80 °C; only the table for boats has it.
	Insulation80
	// Insulation125 is rated 125 °C; only the table for boats has it.
	Insulation125
	// Insulation200 is rated 200 °C; only the table for boats has it.
	Insulation200
)

// insulationClasses are the classes, coolest first, with their temperatures in
// °C.
var insulationClasses = [...]struct {
	class   Insulation
	celsius float64
}{
	{Insulation60, 60}, {Insulation75, 75}, {Insulation80, 80}, {Insulation90, 90},
	{Insulation105, 105}, {Insulation125, 125}, {Insulation200, 200},
}

// Temperature returns the rating; it is not given for the zero Insulation.
func (n Insulation) Temperature() units.Temperature {
	for _, c := range insulationClasses {
		if c.class == n {
			return units.Celsius(c.celsius)
		}
	}
	return units.Temperature{}
}

// InsulationOf returns the class rated t, and whether there is one.
func InsulationOf(t units.Temperature) (n Insulation, ok bool) {
	for _, c := range insulationClasses {
		if t.IsSet() && t.Compare(units.Celsius(c.celsius)) == 0 {
			return c.class, true
		}
	}
	return 0, false
}

// necColumn returns the column of the NEC for n, which has three: the hottest
// that is not hotter than n.
func (n Insulation) necColumn() Insulation {
	switch n {
	case Insulation60, Insulation75, Insulation90:
		return n
	case Insulation80:
		return Insulation75
	}
	return Insulation90
}

// String returns "75 °C", or "not given".
func (n Insulation) String() string { return n.Temperature().String() }

// insulationWords says in words which classes there are.
const insulationWords allowedText = "60, 75, 80, 90, 105, 125 or 200 °C"

// check returns a [*units.RangeError] if n is not a class.
func (n Insulation) check(op, field string) error {
	if n >= Insulation60 && n <= Insulation200 {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: n, Allowed: insulationWords}
}

// MarshalText returns what String does, and empty text for the zero value.
func (n Insulation) MarshalText() ([]byte, error) {
	if n == 0 {
		return []byte{}, nil
	}
	return []byte(n.String()), nil
}

// UnmarshalText reads what [ParseInsulation] reads, with the same errors,
// which leave n alone; empty text is the zero value.
func (n *Insulation) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*n = 0
		return nil
	}
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
		return 0, &units.ParseError{Input: s, Want: "insulation class", Reason: "want " + insulationWords.String()}
	}
	return class, nil
}

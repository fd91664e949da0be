package units

import "fmt"

// A Mass is in kilograms.
type Mass float64

// Units of mass, as factors to write a Mass with.
const (
	Kilogram Mass = 1              // kg; SI base unit
	Gram     Mass = 1e-3           // g; SI prefix
	Pound    Mass = 0.45359237     // lb; exact: avoirdupois pound, 1959; SP 811 B.8
	Ounce    Mass = 0.028349523125 // oz; exact: avoirdupois, a sixteenth of a pound; SP 811 B.8
)

var massKind = kind{
	typ: "Mass", name: "mass", chains: [][]string{{"lb", "oz"}},
	units: []unit{
		{"kg", "1", 1, float64(Kilogram), true, []string{"kilogram", "kilograms"}},
		{"g", "1e-3", 1, float64(Gram), true, []string{"gram", "grams"}},
		{"lb", "0.45359237", 1, float64(Pound), false, []string{"lbs", "pound", "pounds"}},
		{"oz", "0.028349523125", 1, float64(Ounce), false, []string{"ounce", "ounces"}},
	},
}

func (Mass) kind() *kind { return &massKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Mass) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Mass) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Mass.MarshalText] returns.
func (v Mass) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in kg, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Mass) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Mass) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A MassPerLength is in kilograms per metre.
type MassPerLength float64

// Units of mass per length, as factors to write a MassPerLength with.
const (
	KilogramPerMetre MassPerLength = 1                                     // kg/m; SI derived unit
	GramPerMetre     MassPerLength = 1e-3                                  // g/m; SI prefix; equal to kilograms per kilometre
	PoundPerKilofoot MassPerLength = 0.00148816394356955380577427821522310 // lb/kft; derived: 1 lb over 304.8 m
)

var massPerLengthKind = kind{
	typ: "MassPerLength", name: "mass per length",
	units: []unit{
		{"kg/m", "1", 1, float64(KilogramPerMetre), true, []string{"kg per m"}},
		{"g/m", "1e-3", 1, float64(GramPerMetre), true, []string{"kg/km", "g per m"}},
		{"lb/kft", "4.5359237", 3048, float64(PoundPerKilofoot), false, []string{"lb/1000 ft", "lbs/1000 ft"}},
	},
}

func (MassPerLength) kind() *kind { return &massPerLengthKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v MassPerLength) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v MassPerLength) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [MassPerLength.MarshalText] returns.
func (v MassPerLength) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in kg/m, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v MassPerLength) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *MassPerLength) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Pressure is in pascals, absolute unless a field says otherwise.
type Pressure float64

// Units of pressure, as factors to write a Pressure with.
const (
	Kilopascal         Pressure = 1e3                                // kPa; SI prefix
	Hectopascal        Pressure = 1e2                                // hPa; SI prefix; equal to the millibar
	Pascal             Pressure = 1                                  // Pa; SI derived unit
	Bar                Pressure = 1e5                                // bar; exact: SP 811 B.8
	Atmosphere         Pressure = 101325                             // atm; exact: standard atmosphere; SP 811 B.8
	PoundPerSquareInch Pressure = 6894.75729316836133672267344534689 // psi; derived: 4.448 221 615 260 5 N over (0.0254 m)²; SP 811 prints 6.894 757 E+03
	InchOfMercury      Pressure = 3386.389                           // inHg; conventional, seven digits as SP 811 B.8 prints it
)

var pressureKind = kind{
	typ: "Pressure", name: "pressure",
	units: []unit{
		{"kPa", "1e3", 1, float64(Kilopascal), true, []string{"kilopascal"}},
		{"hPa", "1e2", 1, float64(Hectopascal), false, []string{"mbar", "millibar"}},
		{"Pa", "1", 1, float64(Pascal), true, []string{"pascal"}},
		{"bar", "1e5", 1, float64(Bar), false, []string{"bars"}},
		{"atm", "101325", 1, float64(Atmosphere), false, []string{"atmosphere"}},
		{"psi", "6894.75729316836133672267344534689", 1, float64(PoundPerSquareInch), false, []string{"lbf/in2"}},
		{"inHg", "3386.389", 1, float64(InchOfMercury), false, []string{"in Hg"}},
	},
}

func (Pressure) kind() *kind { return &pressureKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Pressure) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Pressure) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Pressure.MarshalText] returns.
func (v Pressure) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in kPa, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Pressure) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Pressure) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Speed is in metres per second.
type Speed float64

// Units of speed, as factors to write a Speed with.
const (
	MetrePerSecond   Speed = 1                                   // m/s; SI derived unit
	KilometrePerHour Speed = 0.277777777777777777777777777777778 // km/h; derived: 1000 m over 3600 s
	MilePerHour      Speed = 0.44704                             // mph; exact: 1609.344 m over 3600 s; SP 811 B.8
	Knot             Speed = 0.514444444444444444444444444444444 // kn; derived: 1852 m over 3600 s; SP 811 B.8
)

var speedKind = kind{
	typ: "Speed", name: "speed",
	units: []unit{
		{"m/s", "1", 1, float64(MetrePerSecond), true, []string{"m/sec"}},
		{"km/h", "1e3", 3600, float64(KilometrePerHour), false, []string{"kph", "km/hr", "kmh"}},
		{"mph", "0.44704", 1, float64(MilePerHour), false, []string{"mi/h"}},
		{"kn", "1852", 3600, float64(Knot), false, []string{"knot", "knots", "kt"}},
	},
}

func (Speed) kind() *kind { return &speedKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Speed) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Speed) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Speed.MarshalText] returns.
func (v Speed) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in m/s, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Speed) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Speed) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Frequency is in hertz.
type Frequency float64

// Units of frequency, as factors to write a Frequency with.
const (
	Hertz     Frequency = 1   // Hz; SI derived unit
	Kilohertz Frequency = 1e3 // kHz; SI prefix
)

var frequencyKind = kind{
	typ: "Frequency", name: "frequency",
	units: []unit{
		{"Hz", "1", 1, float64(Hertz), true, []string{"hertz"}},
		{"kHz", "1e3", 1, float64(Kilohertz), true, []string{"kilohertz"}},
	},
}

func (Frequency) kind() *kind { return &frequencyKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Frequency) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Frequency) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Frequency.MarshalText] returns.
func (v Frequency) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in Hz, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Frequency) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Frequency) UnmarshalText(text []byte) error { return unmarshal(v, text) }

package units

import "fmt"

// A Ratio is a dimensionless number: a fraction, an efficiency, a power
// factor, a factor. It is written in per cent. A bare number is read as
// itself up to 2; a larger one is refused, since it is a percentage that
// lost its sign more often than a ratio.
type Ratio float64

// Units of ratio, as factors to write a Ratio with.
const (
	Percent  Ratio = 1e-2 // %; exact: SP 811 section 7.10.2
	One      Ratio = 1    // 1; the number one
	PerMille Ratio = 1e-3 // ‰; exact: a thousandth
)

var ratioKind = kind{
	typ: "Ratio", name: "ratio", bare: 2,
	units: []unit{
		{"%", "1e-2", 1, float64(Percent), true, []string{"per cent", "pct"}},
		{"1", "1", 1, float64(One), false, nil},
		{"‰", "1e-3", 1, float64(PerMille), false, nil},
	},
}

func (Ratio) kind() *kind { return &ratioKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Ratio) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Ratio) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Ratio.MarshalText] returns.
func (v Ratio) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in %, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Ratio) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Ratio) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A TemperatureChange is a difference of two temperatures in kelvins, which
// are as large as degrees Celsius. A point on the scale is a [Temperature].
type TemperatureChange float64

// Units of temperature change, as factors to write a TemperatureChange with.
const (
	Kelvin           TemperatureChange = 1                                   // K; SI base unit; a Celsius degree is equal
	FahrenheitDegree TemperatureChange = 0.555555555555555555555555555555556 // °F; derived: 5/9 K; SP 811 B.8
)

var temperatureChangeKind = kind{
	typ: "TemperatureChange", name: "temperature change",
	units: []unit{
		{"K", "1", 1, float64(Kelvin), true, []string{"deg C", "C", "C°", "kelvin", "kelvins"}},
		{"°F", "5", 9, float64(FahrenheitDegree), false, []string{"deg F", "F", "F°"}},
	},
}

func (TemperatureChange) kind() *kind { return &temperatureChangeKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v TemperatureChange) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v TemperatureChange) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [TemperatureChange.MarshalText] returns.
func (v TemperatureChange) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in K, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v TemperatureChange) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *TemperatureChange) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A PerKelvin is a relative change for each kelvin: the temperature
// coefficient of a resistance, a voltage or a power.
type PerKelvin float64

// Units of per-kelvin coefficient, as factors to write a PerKelvin with.
const (
	PercentPerKelvin PerKelvin = 1e-2 // %/K; exact: a hundredth per kelvin
	OnePerKelvin     PerKelvin = 1    // 1/K; SI derived unit
)

var perKelvinKind = kind{
	typ: "PerKelvin", name: "per-kelvin coefficient",
	units: []unit{
		{"%/K", "1e-2", 1, float64(PercentPerKelvin), true, []string{"%/°C", "%/C", "% per K"}},
		{"1/K", "1", 1, float64(OnePerKelvin), false, []string{"/K", "/°C", "/C", "1/°C", "per K", "K-1"}},
	},
}

func (PerKelvin) kind() *kind { return &perKelvinKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v PerKelvin) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v PerKelvin) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [PerKelvin.MarshalText] returns.
func (v PerKelvin) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in %/K, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v PerKelvin) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *PerKelvin) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An Elapsed is a computed length of time in seconds. It may be longer than
// a [time.Duration] can hold, or shorter; [Elapsed.Duration] is the one
// checked way across. Instants are [time.Time].
type Elapsed float64

// Units of elapsed time, as factors to write an Elapsed with.
const (
	Second      Elapsed = 1     // s; SI base unit
	Millisecond Elapsed = 1e-3  // ms; SI prefix
	Minute      Elapsed = 60    // min; exact: SP 811 table 6
	Hour        Elapsed = 3600  // h; exact: SP 811 table 6
	Day         Elapsed = 86400 // d; exact: 24 h, not a civil day, which may have 23 or 25
)

var elapsedKind = kind{
	typ: "Elapsed", name: "elapsed time", chains: [][]string{{"d", "h", "min", "s"}},
	units: []unit{
		{"s", "1", 1, float64(Second), true, []string{"sec", "second", "seconds"}},
		{"ms", "1e-3", 1, float64(Millisecond), true, []string{"millisecond", "milliseconds"}},
		{"min", "60", 1, float64(Minute), true, []string{"minute", "minutes"}},
		{"h", "3600", 1, float64(Hour), true, []string{"hr", "hrs", "hour", "hours"}},
		{"d", "86400", 1, float64(Day), true, []string{"day", "days"}},
	},
}

func (Elapsed) kind() *kind { return &elapsedKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Elapsed) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Elapsed) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Elapsed.MarshalText] returns.
func (v Elapsed) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in s, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Elapsed) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Elapsed) UnmarshalText(text []byte) error { return unmarshal(v, text) }

package units

import "fmt"

// A Voltage is an electric potential difference in volts.
type Voltage float64

// Units of voltage, as factors to write a Voltage with.
const (
	Volt      Voltage = 1    // V; SI derived unit
	Millivolt Voltage = 1e-3 // mV; SI prefix
	Kilovolt  Voltage = 1e3  // kV; SI prefix
)

var voltageKind = kind{
	typ: "Voltage", name: "voltage",
	units: []unit{
		{"V", "1", 1, float64(Volt), true, []string{"volt", "volts", "V DC", "V AC"}},
		{"mV", "1e-3", 1, float64(Millivolt), true, []string{"millivolt", "millivolts"}},
		{"kV", "1e3", 1, float64(Kilovolt), true, []string{"kilovolt", "kilovolts"}},
	},
}

func (Voltage) kind() *kind { return &voltageKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Voltage) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Voltage) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Voltage.MarshalText] returns.
func (v Voltage) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in V, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Voltage) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Voltage) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Current is an electric current in amperes.
type Current float64

// Units of current, as factors to write a Current with.
const (
	Ampere      Current = 1    // A; SI base unit
	Milliampere Current = 1e-3 // mA; SI prefix
	Kiloampere  Current = 1e3  // kA; SI prefix
)

var currentKind = kind{
	typ: "Current", name: "current",
	units: []unit{
		{"A", "1", 1, float64(Ampere), true, []string{"amp", "amps", "ampere", "amperes"}},
		{"mA", "1e-3", 1, float64(Milliampere), true, []string{"milliamp", "milliamps", "milliampere", "milliamperes"}},
		{"kA", "1e3", 1, float64(Kiloampere), true, []string{"kiloampere", "kiloamperes"}},
	},
}

func (Current) kind() *kind { return &currentKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Current) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Current) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Current.MarshalText] returns.
func (v Current) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in A, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Current) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Current) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Resistance is an electric resistance, or the size of an impedance, in ohms.
type Resistance float64

// Units of resistance, as factors to write a Resistance with.
const (
	Ohm      Resistance = 1    // Ω; SI derived unit
	Milliohm Resistance = 1e-3 // mΩ; SI prefix
	Microohm Resistance = 1e-6 // µΩ; SI prefix
	Kiloohm  Resistance = 1e3  // kΩ; SI prefix
)

var resistanceKind = kind{
	typ: "Resistance", name: "resistance",
	units: []unit{
		{"Ω", "1", 1, float64(Ohm), true, []string{"ohms"}},
		{"mΩ", "1e-3", 1, float64(Milliohm), true, []string{"milliohm", "milliohms"}},
		{"µΩ", "1e-6", 1, float64(Microohm), true, []string{"microohm", "microohms"}},
		{"kΩ", "1e3", 1, float64(Kiloohm), true, []string{"kiloohm", "kiloohms"}},
	},
}

func (Resistance) kind() *kind { return &resistanceKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Resistance) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Resistance) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Resistance.MarshalText] returns.
func (v Resistance) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in Ω, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Resistance) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Resistance) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Charge is an electric charge in coulombs. Batteries are sold by the
// [AmpereHour], and a Charge is written in it.
type Charge float64

// Units of charge, as factors to write a Charge with.
const (
	AmpereHour      Charge = 3600 // Ah; exact: 3600 s of 1 A
	MilliampereHour Charge = 3.6  // mAh; exact: 3600 s of 1 mA
	Coulomb         Charge = 1    // C; SI derived unit
)

var chargeKind = kind{
	typ: "Charge", name: "charge",
	units: []unit{
		{"Ah", "3600", 1, float64(AmpereHour), true, []string{"A h", "amp hour", "amp hours", "amp-hour", "amp-hours", "ampere hour", "ampere hours"}},
		{"mAh", "3.6", 1, float64(MilliampereHour), true, []string{"mA h"}},
		{"C", "1", 1, float64(Coulomb), false, []string{"coulomb", "coulombs", "A s"}},
	},
}

func (Charge) kind() *kind { return &chargeKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Charge) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Charge) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Charge.MarshalText] returns.
func (v Charge) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in Ah, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Charge) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Charge) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A JouleIntegral is the integral of a squared current over time (I²t), in
// A²s: what a fuse lets through and what a conductor withstands.
type JouleIntegral float64

// Units of joule integral, as factors to write a JouleIntegral with.
const (
	AmpereSquaredSecond     JouleIntegral = 1   // A²s; SI base units
	KiloampereSquaredSecond JouleIntegral = 1e6 // kA²s; exact: (1000 A)² for 1 s
)

var jouleIntegralKind = kind{
	typ: "JouleIntegral", name: "joule integral",
	units: []unit{
		{"A²s", "1", 1, float64(AmpereSquaredSecond), true, []string{"A2 s"}},
		{"kA²s", "1e6", 1, float64(KiloampereSquaredSecond), true, []string{"kA2 s"}},
	},
}

func (JouleIntegral) kind() *kind { return &jouleIntegralKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v JouleIntegral) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v JouleIntegral) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [JouleIntegral.MarshalText] returns.
func (v JouleIntegral) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in A²s, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v JouleIntegral) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *JouleIntegral) UnmarshalText(text []byte) error { return unmarshal(v, text) }

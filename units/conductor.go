package units

import "fmt"

// A Resistivity is a property of a conductor's metal in ohm metres. North
// American handbooks print it in ohm circular mils per foot and call it K.
type Resistivity float64

// Units of resistivity, as factors to write a Resistivity with.
const (
	OhmSquareMillimetrePerMetre Resistivity = 1e-6                                  // Ω·mm²/m; exact: mm² over m
	OhmMetre                    Resistivity = 1                                     // Ω·m; SI derived unit
	MicroohmCentimetre          Resistivity = 1e-8                                  // µΩ·cm; SI prefixes
	OhmCircularMilPerFoot       Resistivity = 1.66242611252459892201981545698540e-9 // Ω·cmil/ft; derived: (π/4)·(0.0254 mm)² over 0.3048 m; SP 811 prints 1.662 426 E-09
)

var resistivityKind = kind{
	typ: "Resistivity", name: "resistivity",
	units: []unit{
		{"Ω·mm²/m", "1e-6", 1, float64(OhmSquareMillimetrePerMetre), true, nil},
		{"Ω·m", "1", 1, float64(OhmMetre), false, []string{"ohm-m"}},
		{"µΩ·cm", "1e-8", 1, float64(MicroohmCentimetre), false, []string{"microohm cm", "uohm-cm"}},
		{"Ω·cmil/ft", "1.66242611252459892201981545698540e-9", 1, float64(OhmCircularMilPerFoot), false, []string{"ohm-cmil/ft", "ohm cmil per ft"}},
	},
}

func (Resistivity) kind() *kind { return &resistivityKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Resistivity) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Resistivity) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Resistivity.MarshalText] returns.
func (v Resistivity) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in Ω·mm²/m, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Resistivity) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Resistivity) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A ResistancePerLength is the resistance of one metre of a conductor in
// ohms per metre. One conductor, not the two of a circuit.
type ResistancePerLength float64

// Units of resistance per length, as factors to write a ResistancePerLength with.
const (
	MilliohmPerMetre ResistancePerLength = 1e-3                                  // mΩ/m; SI prefix; equal to ohms per kilometre
	OhmPerMetre      ResistancePerLength = 1                                     // Ω/m; SI derived unit
	OhmPerFoot       ResistancePerLength = 3.28083989501312335958005249343832    // Ω/ft; derived: 1 ohm over 0.3048 m
	OhmPerKilofoot   ResistancePerLength = 0.00328083989501312335958005249343832 // Ω/kft; derived: 1 ohm over 304.8 m
)

var resistancePerLengthKind = kind{
	typ: "ResistancePerLength", name: "resistance per length",
	units: []unit{
		{"mΩ/m", "1e-3", 1, float64(MilliohmPerMetre), true, []string{"ohm/km", "ohms/km", "ohm per km", "mV/A/m"}},
		{"Ω/m", "1", 1, float64(OhmPerMetre), false, []string{"ohm per m", "V/A/m"}},
		{"Ω/ft", "1e4", 3048, float64(OhmPerFoot), false, []string{"ohm per ft", "ohms/ft"}},
		{"Ω/kft", "10", 3048, float64(OhmPerKilofoot), false, []string{"ohm/1000 ft", "ohms/1000 ft", "ohm per kft", "ohm/Mft"}},
	},
}

func (ResistancePerLength) kind() *kind { return &resistancePerLengthKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v ResistancePerLength) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v ResistancePerLength) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [ResistancePerLength.MarshalText] returns.
func (v ResistancePerLength) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in mΩ/m, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v ResistancePerLength) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *ResistancePerLength) UnmarshalText(text []byte) error { return unmarshal(v, text) }

package units

import "fmt"

// A Power is real power in watts. For volt-amperes see [ApparentPower].
type Power float64

// Units of power, as factors to write a Power with.
const (
	Watt                 Power = 1                                   // W; SI derived unit
	Milliwatt            Power = 1e-3                                // mW; SI prefix
	Kilowatt             Power = 1e3                                 // kW; SI prefix
	BtuITPerHour         Power = 0.293071070172222222222222222222222 // Btu(IT)/h; derived: one BtuIT over 3600 s; SP 811 prints 2.930 711 E-01; plain Btu is read as this one
	KiloBtuITPerHour     Power = 293.071070172222222222222222222222  // kBtu(IT)/h; derived: 1000 BtuIT over 3600 s
	MechanicalHorsepower Power = 745.69987158227022                  // hp(mech); exact: 550 ft·lbf/s; SP 811 prints 7.456 999 E+02; plain hp is read as this one
	ElectricHorsepower   Power = 746                                 // hp(elec); exact: SP 811 B.8
	MetricHorsepower     Power = 735.49875                           // hp(metric); exact: 75 kgf·m/s; SP 811 prints 7.354 988 E+02
)

var powerKind = kind{
	typ: "Power", name: "power",
	units: []unit{
		{"W", "1", 1, float64(Watt), true, []string{"watt", "watts"}},
		{"mW", "1e-3", 1, float64(Milliwatt), true, []string{"milliwatt", "milliwatts"}},
		{"kW", "1e3", 1, float64(Kilowatt), true, []string{"kilowatt", "kilowatts"}},
		{"Btu(IT)/h", "1055.05585262", 3600, float64(BtuITPerHour), false, []string{"Btu/h", "Btu/hr", "BTUH"}},
		{"kBtu(IT)/h", "1055055.85262", 3600, float64(KiloBtuITPerHour), false, []string{"kBtu/h", "kBtu/hr"}},
		{"hp(mech)", "745.69987158227022", 1, float64(MechanicalHorsepower), false, []string{"hp"}},
		{"hp(elec)", "746", 1, float64(ElectricHorsepower), false, nil},
		{"hp(metric)", "735.49875", 1, float64(MetricHorsepower), false, []string{"PS"}},
	},
}

func (Power) kind() *kind { return &powerKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Power) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Power) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Power.MarshalText] returns.
func (v Power) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in W, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Power) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Power) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An ApparentPower is the product of effective voltage and current, in
// volt-amperes. It is what a cord, a generator and an inverter must carry;
// [Power] is what the load turns into work and heat.
type ApparentPower float64

// Units of apparent power, as factors to write an ApparentPower with.
const (
	VoltAmpere     ApparentPower = 1   // VA; SI derived unit
	KilovoltAmpere ApparentPower = 1e3 // kVA; SI prefix
)

var apparentPowerKind = kind{
	typ: "ApparentPower", name: "apparent power",
	units: []unit{
		{"VA", "1", 1, float64(VoltAmpere), true, []string{"V A", "volt-ampere", "volt-amperes", "volt-amp", "volt-amps"}},
		{"kVA", "1e3", 1, float64(KilovoltAmpere), true, []string{"kV A", "kilovolt-ampere"}},
	},
}

func (ApparentPower) kind() *kind { return &apparentPowerKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v ApparentPower) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v ApparentPower) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [ApparentPower.MarshalText] returns.
func (v ApparentPower) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in VA, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v ApparentPower) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *ApparentPower) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An Energy is in joules. Electric energy is sold by the [KilowattHour], and
// an Energy is written in watt-hours.
type Energy float64

// Units of energy, as factors to write an Energy with.
const (
	WattHour     Energy = 3600                               // Wh; exact: 3600 s of 1 W; SP 811 B.8
	KilowattHour Energy = 3.6e6                              // kWh; exact: SP 811 B.8
	Joule        Energy = 1                                  // J; SI derived unit
	Kilojoule    Energy = 1e3                                // kJ; SI prefix
	Megajoule    Energy = 1e6                                // MJ; SI prefix
	BtuIT        Energy = 1055.05585262                      // Btu(IT); exact: International Table; SP 811 B.8, footnote; plain Btu is read as this one
	BtuTh        Energy = 1054.35026448888888888888888888889 // Btu(th); derived: thermochemical, 4.184 J/cal; SP 811 prints 1.054 350 E+03
	KiloBtuIT    Energy = 1055055.85262                      // kBtu(IT); exact: 1000 BtuIT
)

var energyKind = kind{
	typ: "Energy", name: "energy",
	units: []unit{
		{"Wh", "3600", 1, float64(WattHour), true, []string{"W h", "watt hour", "watt hours", "watt-hour", "watt-hours"}},
		{"kWh", "3.6e6", 1, float64(KilowattHour), true, []string{"kW h", "kilowatt hour", "kilowatt hours", "kilowatt-hour", "kilowatt-hours"}},
		{"J", "1", 1, float64(Joule), false, []string{"joule", "joules", "W s"}},
		{"kJ", "1e3", 1, float64(Kilojoule), false, []string{"kilojoule"}},
		{"MJ", "1e6", 1, float64(Megajoule), false, []string{"megajoule", "megajoules"}},
		{"Btu(IT)", "1055.05585262", 1, float64(BtuIT), false, []string{"Btu"}},
		{"Btu(th)", "9489.1523804", 9, float64(BtuTh), false, nil},
		{"kBtu(IT)", "1055055.85262", 1, float64(KiloBtuIT), false, []string{"kBtu"}},
	},
}

func (Energy) kind() *kind { return &energyKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Energy) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Energy) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Energy.MarshalText] returns.
func (v Energy) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in Wh, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Energy) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Energy) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An Irradiance is radiant power on a surface in watts per square metre.
type Irradiance float64

// Units of irradiance, as factors to write an Irradiance with.
const (
	WattPerSquareMetre     Irradiance = 1   // W/m²; SI derived unit
	KilowattPerSquareMetre Irradiance = 1e3 // kW/m²; SI prefix
)

var irradianceKind = kind{
	typ: "Irradiance", name: "irradiance",
	units: []unit{
		{"W/m²", "1", 1, float64(WattPerSquareMetre), true, []string{"W/sq m"}},
		{"kW/m²", "1e3", 1, float64(KilowattPerSquareMetre), false, nil},
	},
}

func (Irradiance) kind() *kind { return &irradianceKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Irradiance) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Irradiance) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Irradiance.MarshalText] returns.
func (v Irradiance) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in W/m², with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Irradiance) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Irradiance) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An Irradiation is radiant energy on a surface in joules per square metre:
// an [Irradiance] over time. One kWh/m² is one peak-sun-hour.
type Irradiation float64

// Units of irradiation, as factors to write an Irradiation with.
const (
	KilowattHourPerSquareMetre Irradiation = 3.6e6 // kWh/m²; exact: 3.6 MJ
	WattHourPerSquareMetre     Irradiation = 3600  // Wh/m²; exact: 3600 J
	MegajoulePerSquareMetre    Irradiation = 1e6   // MJ/m²; SI prefix
	JoulePerSquareMetre        Irradiation = 1     // J/m²; SI derived unit
)

var irradiationKind = kind{
	typ: "Irradiation", name: "irradiation",
	units: []unit{
		{"kWh/m²", "3.6e6", 1, float64(KilowattHourPerSquareMetre), true, []string{"kW h/m2", "kWh/sq m"}},
		{"Wh/m²", "3600", 1, float64(WattHourPerSquareMetre), false, []string{"W h/m2", "Wh/sq m"}},
		{"MJ/m²", "1e6", 1, float64(MegajoulePerSquareMetre), false, nil},
		{"J/m²", "1", 1, float64(JoulePerSquareMetre), false, nil},
	},
}

func (Irradiation) kind() *kind { return &irradiationKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Irradiation) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Irradiation) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Irradiation.MarshalText] returns.
func (v Irradiation) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in kWh/m², with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Irradiation) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Irradiation) UnmarshalText(text []byte) error { return unmarshal(v, text) }

package units

import "fmt"

// A Length is a distance in metres. Fields say whether it is one way or
// there and back.
type Length float64

// Units of length, as factors to write a Length with.
const (
	Metre      Length = 1        // m; SI base unit
	Millimetre Length = 1e-3     // mm; SI prefix
	Centimetre Length = 1e-2     // cm; SI prefix
	Kilometre  Length = 1e3      // km; SI prefix
	Foot       Length = 0.3048   // ft; exact: international foot, 1959; SP 811 B.8
	Inch       Length = 0.0254   // in; exact: international inch, 1959; SP 811 B.8
	Mil        Length = 2.54e-5  // mil; exact: a thousandth of an inch; SP 811 B.8
	Mile       Length = 1609.344 // mi; exact: international mile of 5280 ft; SP 811 B.8
)

var lengthKind = kind{
	typ: "Length", name: "length", chains: [][]string{{"ft", "in"}},
	units: []unit{
		{"m", "1", 1, float64(Metre), true, []string{"metre", "metres", "meter", "meters"}},
		{"mm", "1e-3", 1, float64(Millimetre), true, []string{"millimetre", "millimetres", "millimeter", "millimeters"}},
		{"cm", "1e-2", 1, float64(Centimetre), false, []string{"centimetre", "centimetres", "centimeter", "centimeters"}},
		{"km", "1e3", 1, float64(Kilometre), true, []string{"kilometre", "kilometres", "kilometer", "kilometers"}},
		{"ft", "0.3048", 1, float64(Foot), false, []string{"foot", "feet", "'"}},
		{"in", "0.0254", 1, float64(Inch), false, []string{"inch", "inches", `"`}},
		{"mil", "2.54e-5", 1, float64(Mil), false, []string{"mils"}},
		{"mi", "1609.344", 1, float64(Mile), false, []string{"mile", "miles"}},
	},
}

func (Length) kind() *kind { return &lengthKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Length) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Length) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Length.MarshalText] returns.
func (v Length) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in m, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Length) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Length) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An Area is a surface, or the metal cross-section of a conductor, in
// square metres.
type Area float64

// Units of area, as factors to write an Area with.
const (
	SquareMillimetre Area = 1e-6                                   // mm²; SI prefix
	SquareCentimetre Area = 1e-4                                   // cm²; SI prefix
	SquareMetre      Area = 1                                      // m²; SI derived unit
	CircularMil      Area = 5.06707479097497751431639751289151e-10 // cmil; derived: (π/4)·(0.0254 mm)²; SP 811 prints 5.067 075 E-10
	KilocircularMil  Area = 5.06707479097497751431639751289151e-7  // kcmil; derived: 1000 circular mils
	SquareInch       Area = 6.4516e-4                              // in²; exact: (0.0254 m)²; SP 811 B.8
	SquareFoot       Area = 0.09290304                             // ft²; exact: (0.3048 m)²; SP 811 B.8
)

var areaKind = kind{
	typ: "Area", name: "area",
	units: []unit{
		{"mm²", "1e-6", 1, float64(SquareMillimetre), true, []string{"sq mm"}},
		{"cm²", "1e-4", 1, float64(SquareCentimetre), false, []string{"sq cm"}},
		{"m²", "1", 1, float64(SquareMetre), true, []string{"sq m"}},
		{"cmil", "5.06707479097497751431639751289151e-10", 1, float64(CircularMil), false, []string{"circular mil", "circular mils"}},
		{"kcmil", "5.06707479097497751431639751289151e-7", 1, float64(KilocircularMil), false, []string{"MCM"}},
		{"in²", "6.4516e-4", 1, float64(SquareInch), false, []string{"sq in"}},
		{"ft²", "0.09290304", 1, float64(SquareFoot), false, []string{"sq ft"}},
	},
}

func (Area) kind() *kind { return &areaKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Area) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Area) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Area.MarshalText] returns.
func (v Area) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in mm², with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Area) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Area) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A Volume is in cubic metres.
type Volume float64

// Units of volume, as factors to write a Volume with.
const (
	Litre          Volume = 1e-3           // L; exact: accepted with SI; SP 811 table 6
	Millilitre     Volume = 1e-6           // mL; SI prefix
	CubicMetre     Volume = 1              // m³; SI derived unit
	GallonUS       Volume = 3.785411784e-3 // gal(US); exact: 231 in³; SP 811 B.8; plain gal is read as this one
	GallonImperial Volume = 4.54609e-3     // gal(imp); exact: SP 811 B.8
	CubicFoot      Volume = 0.028316846592 // ft³; exact: (0.3048 m)³; SP 811 B.8
)

var volumeKind = kind{
	typ: "Volume", name: "volume",
	units: []unit{
		{"L", "1e-3", 1, float64(Litre), true, []string{"litre", "litres", "liter", "liters"}},
		{"mL", "1e-6", 1, float64(Millilitre), true, []string{"millilitre", "milliliter"}},
		{"m³", "1", 1, float64(CubicMetre), false, []string{"cu m"}},
		{"gal(US)", "3.785411784e-3", 1, float64(GallonUS), false, []string{"gal", "gallon", "gallons", "US gal"}},
		{"gal(imp)", "4.54609e-3", 1, float64(GallonImperial), false, []string{"imp gal"}},
		{"ft³", "0.028316846592", 1, float64(CubicFoot), false, []string{"cu ft"}},
	},
}

func (Volume) kind() *kind { return &volumeKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Volume) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Volume) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Volume.MarshalText] returns.
func (v Volume) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in L, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Volume) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Volume) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// A VolumeFlow is in cubic metres per second.
type VolumeFlow float64

// Units of volume flow, as factors to write a VolumeFlow with.
const (
	CubicMetrePerHour   VolumeFlow = 0.000277777777777777777777777777777778 // m³/h; derived: 1 m³ over 3600 s
	CubicMetrePerSecond VolumeFlow = 1                                      // m³/s; SI derived unit
	LitrePerHour        VolumeFlow = 2.77777777777777777777777777777778e-7  // L/h; derived: 1 L over 3600 s
	LitrePerMinute      VolumeFlow = 1.66666666666666666666666666666667e-5  // L/min; derived: 1 L over 60 s
	GallonUSPerHour     VolumeFlow = 1.05150327333333333333333333333333e-6  // gal(US)/h; derived: 1 US gallon over 3600 s
	CubicFootPerMinute  VolumeFlow = 4.719474432e-4                         // ft³/min; exact: (0.3048 m)³ over 60 s; SP 811 B.8
)

var volumeFlowKind = kind{
	typ: "VolumeFlow", name: "volume flow",
	units: []unit{
		{"m³/h", "1", 3600, float64(CubicMetrePerHour), true, []string{"m3/hr"}},
		{"m³/s", "1", 1, float64(CubicMetrePerSecond), false, []string{"m3/sec"}},
		{"L/h", "1e-3", 3600, float64(LitrePerHour), false, []string{"L/hr", "lph"}},
		{"L/min", "1e-3", 60, float64(LitrePerMinute), false, []string{"lpm"}},
		{"gal(US)/h", "3.785411784e-3", 3600, float64(GallonUSPerHour), false, []string{"gal/h", "gal/hr", "gph"}},
		{"ft³/min", "4.719474432e-4", 1, float64(CubicFootPerMinute), false, []string{"cfm", "cu ft/min"}},
	},
}

func (VolumeFlow) kind() *kind { return &volumeFlowKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v VolumeFlow) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v VolumeFlow) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [VolumeFlow.MarshalText] returns.
func (v VolumeFlow) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in m³/h, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v VolumeFlow) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *VolumeFlow) UnmarshalText(text []byte) error { return unmarshal(v, text) }

// An Angle is a plane angle in radians.
type Angle float64

// Units of angle, as factors to write an Angle with.
const (
	Degree    Angle = 0.0174532925199432957692369076848861  // °; derived: π/180 rad; SP 811 table 6
	ArcMinute Angle = 2.90888208665721596153948461414769e-4 // ′; derived: π/10 800 rad; SP 811 table 6
	ArcSecond Angle = 4.84813681109535993589914102357948e-6 // ″; derived: π/648 000 rad; SP 811 table 6
	Radian    Angle = 1                                     // rad; SI derived unit
)

var angleKind = kind{
	typ: "Angle", name: "angle", chains: [][]string{{"°", "′", "″"}},
	units: []unit{
		{"°", "0.0174532925199432957692369076848861", 1, float64(Degree), true, []string{"degree", "degrees"}},
		{"′", "2.90888208665721596153948461414769e-4", 1, float64(ArcMinute), false, []string{"arcmin"}},
		{"″", "4.84813681109535993589914102357948e-6", 1, float64(ArcSecond), false, []string{"arcsec"}},
		{"rad", "1", 1, float64(Radian), false, []string{"radian", "radians"}},
	},
}

func (Angle) kind() *kind { return &angleKind }

// String returns v in the unit that suits its size, to six significant digits.
func (v Angle) String() string { return toString(v) }

// Format implements [fmt.Formatter] as the package comment describes.
func (v Angle) Format(s fmt.State, verb rune) { format(s, verb, v) }

// AppendText appends what [Angle.MarshalText] returns.
func (v Angle) AppendText(b []byte) ([]byte, error) { return appendText(b, v) }

// MarshalText returns v in °, with the digits that read back exactly. A v
// that is not finite is a [*RangeError].
func (v Angle) MarshalText() ([]byte, error) { return appendText(nil, v) }

// UnmarshalText reads what [Parse] reads, with the same errors.
func (v *Angle) UnmarshalText(text []byte) error { return unmarshal(v, text) }

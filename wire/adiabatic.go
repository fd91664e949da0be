package wire

import (
	"math"

	"example.com/drawbar/units"
)

// Core is the insulation of a conductor and how it lies, for the heat of a
// short circuit. The zero value is not given.
type Core uint8

const (
	// CorePVC70 is a core in a cable with thermoplastic insulation of 70 °C.
	CorePVC70 Core = iota + 1
	// CorePVC90 is a core in a cable with thermoplastic insulation of 90 °C.
	CorePVC90
	// CoreXLPE90 is a core in a cable with thermosetting insulation of 90 °C.
	CoreXLPE90
	// CoreRubber60 is a core in a cable with rubber insulation of 60 °C.
	CoreRubber60
	// CoreRubber85 is a core in a cable with rubber insulation of 85 °C.
	CoreRubber85
	// CoreSilicone180 is a core in a cable with silicone insulation of 180 °C.
	CoreSilicone180
	// SeparatePVC70 is a protective conductor by itself, not bundled, with
	// thermoplastic insulation of 70 °C. It carries nothing before the fault.
	SeparatePVC70
	// SeparateThermoset90 is one with thermosetting insulation of 90 °C.
	SeparateThermoset90
)

// A coreRow is the metal's temperature in °C before a fault and at most after
// it, and k for copper in A·√s/mm².
type coreRow struct {
	core           Core
	initial, final float64
	k              units.Ratio
}

// The factor k of copper, and the temperatures it is for. Thermoplastic
// insulation over 300 mm², which no Size reaches, has less and is left out.
// Source: BS 7671 Tables 43.1 and 54.2 to 54.4, IEC 60364-4-43 and 5-54, read in
// public articles that quote them.
var coreTable = [...]coreRow{
	{CorePVC70, 70, 160, 115},
	{CorePVC90, 90, 160, 100},
	{CoreXLPE90, 90, 250, 143},
	{CoreRubber60, 60, 200, 141},
	{CoreRubber85, 85, 220, 134},
	{CoreSilicone180, 180, 350, 132},
	{SeparatePVC70, 30, 160, 143},
	{SeparateThermoset90, 30, 250, 176},
}

// What the formula for k has: its constant in A·√s/mm² and the temperature, in
// °C below zero, at which the resistance would vanish.
// Source: IEC 60364-5-54, annex A. Provenance: memory; with it the table of
// copper comes out within 0.4 %.
const (
	copperK       = 226.0
	copperZero    = 234.5
	aluminiumK    = 148.0
	aluminiumZero = 228.0
)

// What thermoplastic and thermosetting insulation bear for seconds.
var (
	thermoplasticEnd = units.Celsius(160)
	thermosetEnd     = units.Celsius(250)
)

// shortTimes are the times in which a conductor keeps its heat: beyond 5 s
// some leaves through the insulation.
var shortTimes = units.Above[units.Elapsed](0).AtMost(5 * units.Second)

// coreTemperatures are those that Initial and Final may have; copper melts at
// 1085 °C and its properties are taken as straight lines long below that.
var coreTemperatures = units.TemperatureBounds{Low: units.Celsius(-40), High: units.Celsius(400)}

// A ShortTime is a current through a conductor for seconds.
type ShortTime struct {
	Size  Size  // of the conductor
	Metal Metal // copper or aluminium; for copper-clad there is no factor
	// Core is the row of the table. Without it, Initial and Final say from and
	// to which temperature the metal may warm.
	Core           Core
	Initial, Final units.Temperature        // -40 °C to 400 °C, Initial below Final; not with Core
	Current        units.Current            // in one conductor, > 0
	Time           units.Opt[units.Elapsed] // how long, > 0 and not above 5 s; not given: only Longest
}

// A Withstand is the result of [Adiabatic].
type Withstand struct {
	ShortTime ShortTime           // as used; Initial and Final are filled in
	K         units.Ratio         // in A·√s/mm²
	Area      units.Area          // of the metal
	Bears     units.JouleIntegral // k²S²
	Let       units.JouleIntegral // I²t; 0 if Time was not given
	MinArea   units.Area          // that bears Let; 0 if Time was not given
	// Longest is how long the conductor bears Current; not given if that is
	// more than 5 s, which the method does not reach.
	Longest units.Opt[units.Elapsed]
}

// Adiabatic holds the heat of a short circuit against what a conductor bears:
//
//	I²·t <= k²·S²,  k = 226 · sqrt(ln((234.5 + T_final)/(234.5 + T_initial)))
//
// k is the table's for copper with a Core, and by the formula otherwise, with
// 148 and 228 for aluminium. All heat is taken to stay in the metal, so the
// method ends at 5 s, and a longer Time is refused. Arcs, joints and what the
// device lets through in its first half-cycle are left out.
//
// A field outside the range that [ShortTime] states gives a
// [*units.RangeError] and the zero Withstand.
func Adiabatic(x ShortTime) (Withstand, error) { return adiabatic("wire.Adiabatic", x) }

func adiabatic(op string, x ShortTime) (Withstand, error) {
	if err := x.check(op); err != nil {
		return Withstand{}, err
	}
	w := Withstand{ShortTime: x, Area: x.Size.Area()}
	if row, ok := x.Core.row(); ok {
		w.ShortTime.Initial, w.ShortTime.Final = units.Celsius(row.initial), units.Celsius(row.final)
		w.K = row.k
	}
	if x.Core == 0 || x.Metal != Copper {
		k, zero := x.Metal.adiabatic()
		w.K = units.Ratio(k * math.Sqrt(math.Log((zero+w.ShortTime.Final.Celsius())/(zero+w.ShortTime.Initial.Celsius()))))
	}
	heat := float64(w.K) * units.In(w.Area, units.SquareMillimetre)
	w.Bears = units.JouleIntegral(heat * heat)
	root := heat / float64(x.Current)
	longest := units.Elapsed(root * root)
	if longest == 0 {
		return Withstand{}, &units.RangeError{Op: op, Field: "Current", Value: x.Current, Allowed: units.Above[units.Current](0)}
	}
	if shortTimes.Contains(longest) {
		w.Longest = units.Some(longest)
	}
	if t, ok := x.Time.Get(); ok {
		w.Let = x.Current.LetThrough(t)
		if err := units.Above[units.JouleIntegral](0).Check(op, "Let", w.Let); err != nil {
			return Withstand{}, err
		}
		w.MinArea = units.Area(math.Sqrt(float64(w.Let))/float64(w.K)) * units.SquareMillimetre
	}
	return w, nil
}

// row returns the row of the table.
func (c Core) row() (coreRow, bool) {
	for _, r := range coreTable {
		if r.core == c {
			return r, true
		}
	}
	return coreRow{}, false
}

// adiabatic returns the constants of the formula.
func (m Metal) adiabatic() (k, zero float64) {
	if m == Aluminium {
		return aluminiumK, aluminiumZero
	}
	return copperK, copperZero
}

// check reports the first field out of range.
func (x ShortTime) check(op string) error {
	if err := x.Size.check(op, "Size"); err != nil {
		return err
	}
	if x.Metal != Copper && x.Metal != Aluminium {
		return &units.RangeError{Op: op, Field: "Metal", Value: x.Metal, Allowed: allowedText("copper or aluminium: copper-clad has no published factor")}
	}
	if x.Core > SeparateThermoset90 {
		return &units.RangeError{Op: op, Field: "Core", Value: x.Core, Allowed: wordList(coreWords[1:])}
	}
	if err := x.checkTemperatures(op); err != nil {
		return err
	}
	if t, ok := x.Time.Get(); ok {
		if err := shortTimes.Check(op, "Time", t); err != nil {
			return err
		}
	}
	return units.Above[units.Current](0).Check(op, "Current", x.Current)
}

// checkTemperatures holds them against the row: either says from where to
// where.
func (x ShortTime) checkTemperatures(op string) error {
	if x.Core != 0 {
		const none allowedText = "not given: Core has its own"
		if x.Initial.IsSet() {
			return &units.RangeError{Op: op, Field: "Initial", Value: x.Initial, Allowed: none}
		}
		if x.Final.IsSet() {
			return &units.RangeError{Op: op, Field: "Final", Value: x.Final, Allowed: none}
		}
		return nil
	}
	if err := coreTemperatures.Check(op, "Initial", x.Initial); err != nil {
		return err
	}
	if err := coreTemperatures.Check(op, "Final", x.Final); err != nil {
		return err
	}
	if x.Initial.Compare(x.Final) >= 0 {
		return &units.RangeError{Op: op, Field: "Final", Value: x.Final, Allowed: allowedText("above Initial")}
	}
	return nil
}

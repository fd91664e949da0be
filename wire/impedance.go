package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// An ACConductor is one conductor of an alternating-current circuit as it is
// laid.
type ACConductor struct {
	// Conductor is looked up in NEC Chapter 9 Table 9 if it has the size and the
	// metal and neither Coated, Basis, Resistivity nor Stated is given; its Strand
	// is then not used. Otherwise its direct-current resistance is taken, which
	// in plastic and up to 4/0 AWG is within 4 % of that table; metal conduit
	// and larger sizes add more.
	Conductor Conductor
	// Conduit is PVCConduit unless said otherwise; plastic cable counts as it.
	Conduit Conduit
	// Reactance, if given, is that of one conductor per length, >= 0. Not given
	// means that of Table 9, and is refused for a size that it does not have.
	Reactance units.Opt[units.ResistancePerLength]
}

// An Impedance is the result of [ACImpedance].
type Impedance struct {
	ACConductor ACConductor // as used; Temperature is filled in
	FromTable9  bool        // R is of Table 9
	// At75 is the resistance that Table 9 has, at 75 °C; 0 if R is not of it.
	At75 units.ResistancePerLength
	// PerLength is where R is from if it is not of Table 9, else zero.
	PerLength PerLength
	R         units.ResistancePerLength // resistance of one conductor
	X         units.ResistancePerLength // reactance of one conductor
}

// ACImpedance returns resistance and reactance of one conductor per length at
// 60 Hz. Table 9 is for 75 °C; at another temperature its resistance is
// corrected as the note below Table 8 has it, and its reactance stays.
//
// A field outside the range that [Conductor] and [ACConductor] state gives a
// [*units.RangeError], and the zero Impedance.
func ACImpedance(a ACConductor) (Impedance, error) { return acImpedance("wire.ACImpedance", a) }

func acImpedance(op string, a ACConductor) (Impedance, error) {
	if a.Conduit > SteelConduit {
		return Impedance{}, &units.RangeError{Op: op, Field: "Conduit", Value: a.Conduit, Allowed: wording("PVC, aluminium or steel")}
	}
	c := a.Conductor
	r75, x := table9(c.Size, c.Metal, a.Conduit)
	if given, ok := a.Reactance.Get(); ok {
		if err := units.AtLeast[units.ResistancePerLength](0).Check(op, "Reactance", given); err != nil {
			return Impedance{}, err
		}
		x = given
	}
	z := Impedance{ACConductor: a, X: x}
	if r75 > 0 && !c.Coated && !c.Basis.IsSet() && !c.Resistivity.IsSet() && !c.Stated.IsSet() {
		if err := c.check(op); err != nil {
			return Impedance{}, err
		}
		z.FromTable9, z.At75 = true, r75
		z.ACConductor.Conductor.Temperature = c.Temperature.Or(tableTemperature)
		z.R = units.Scale(r75, 1+c.Metal.alpha75().Over(z.ACConductor.Conductor.Temperature.Sub(tableTemperature)))
		return z, nil
	}
	p, err := resistance(op, c)
	if err != nil {
		return Impedance{}, err
	}
	if x == 0 && !a.Reactance.IsSet() {
		return Impedance{}, &units.RangeError{Op: op, Field: "Reactance", Value: a.Reactance,
			Allowed: wording("given, since NEC Table 9 has 14 AWG to 500 kcmil of copper and aluminium only")}
	}
	z.ACConductor.Conductor, z.PerLength, z.R = p.Conductor, p, p.At
	return z, nil
}

// Working returns how the impedance came about, step by step.
func (z Impedance) Working() *working.Sheet {
	s := working.NewSheet("Impedance of one conductor, " + z.name())
	z.steps(s, "")
	return s
}

// Findings returns what needs attention in the conductor, worst first.
func (z Impedance) Findings() []working.Finding {
	if !z.FromTable9 {
		return z.PerLength.Findings()
	}
	if metal, ok := z.ACConductor.Conductor.metalFinding(); ok {
		return []working.Finding{metal}
	}
	return nil
}

// name says which conductor z is about.
func (z Impedance) name() string {
	if !z.FromTable9 {
		return z.PerLength.name()
	}
	c := z.ACConductor.Conductor
	return c.Size.String() + " " + c.Metal.String() + " in " + z.ACConductor.Conduit.String() + ", at " + c.Temperature.String()
}

// steps appends the steps that end in r and x of the conductor that of names,
// such as "_N"; it is empty if there is only one. Two conductors of one sheet
// are both of the same kind of source, or the second only given.
func (z Impedance) steps(s *working.Sheet, of string) {
	a := z.ACConductor
	where := working.Lookup{Source: table9Source, Key: a.Conductor.Size.String(), Row: a.Conduit.String() + " conduit"}
	switch {
	case z.FromTable9:
		row := where
		row.Row = a.Conductor.Metal.String() + ", " + where.Row
		s.LookUp("r_75"+of, z.At75, "mΩ/m", "resistance per length at 75 °C", row)
		s.Given("T"+of, a.Conductor.Temperature, "°C", "temperature of the metal")
		s.Constant("T_75"+of, tableTemperature, "°C", "temperature that the table belongs to", table9Source)
		s.Constant("α_75"+of, a.Conductor.Metal.alpha75(), "1/K", "temperature coefficient at 75 °C", table8NoteSource)
		s.Formula("r"+of, z.R, "Ω/m", perLengthWhat, "r_75"+of+"/1000 * (1 + α_75"+of+"*(T"+of+" - T_75"+of+"))")
	case of == "":
		z.PerLength.steps(s)
	default:
		s.Given("r"+of, z.R, "Ω/m", perLengthWhat+", "+z.PerLength.name())
	}
	if a.Reactance.IsSet() {
		s.Given("x"+of, z.X, "Ω/m", "reactance of one conductor per length, as given")
		return
	}
	s.LookUp("x"+of, z.X, "Ω/m", "reactance of one conductor per length", where)
}

package wire

import (
	"example.com/drawbar/units"
)

// Strand is how a conductor is made up. The zero value is [Stranded], as the
// wire of a vehicle must be.
type Strand uint8

const (
	// Stranded is a conductor of concentric strands, class 2 of IEC 60228.
	Stranded Strand = iota
	// Solid is a conductor of one wire, class 1 of IEC 60228.
	Solid
	// Flexible is a conductor of many fine strands, class 5 of IEC 60228. For
	// gauges there is no one figure; give the datasheet's as Conductor.Stated.
	Flexible
)

// WarmCopper is the temperature that a Conductor is taken at if none is
// given: that of NEC Chapter 9 Table 8, copper as warm as the usual insulation
// allows. Cooler copper drops less, 18 % less at 20 °C.
func WarmCopper() units.Temperature { return units.Celsius(75) }

// A Conductor is one copper conductor. Give a Size, for which the resistance
// is worked out, or a Stated resistance.
type Conductor struct {
	// Size is needed unless Stated is given, and then only a name.
	Size Size
	// Strand is Stranded unless said otherwise; Flexible needs a metric Size.
	Strand Strand
	// Temperature of the metal, -40 °C to 150 °C; not given means WarmCopper.
	// Not the temperature of the air.
	Temperature units.Temperature
	// Resistivity, if given, is used for the metal as it is: at its working
	// temperature and with the lay of strands in it, as the K of North
	// American handbooks is. Temperature and Strand are then not used. > 0.
	Resistivity units.Opt[units.Resistivity]
	// Stated, if given, is the resistance per length of one conductor at its
	// working temperature, from a table or a datasheet, and beats everything
	// above. > 0.
	Stated units.Opt[units.ResistancePerLength]
}

// Basis says where the resistance of a conductor came from.
type Basis uint8

const (
	// FromCopper is the resistivity of copper and the geometry of the gauge.
	FromCopper Basis = iota
	// FromIEC60228 is the limit of IEC 60228 for the metric size.
	FromIEC60228
	// FromResistivity is the caller's resistivity and the area of the size.
	FromResistivity
	// FromStated is the caller's resistance per length.
	FromStated
)

// PerLength is the result of [Resistance].
type PerLength struct {
	Conductor Conductor // as used; Temperature is filled in
	Basis     Basis     // which of the four ways gave At
	// Area of the metal, nominal for a metric size; 0 if Stated was used.
	Area units.Area
	// Rho is the resistivity at the temperature, lay included; 0 if it was not
	// used.
	Rho units.Resistivity
	// At20 is the tabulated resistance per length at 20 °C; 0 but for a
	// metric size.
	At20 units.ResistancePerLength
	// At is the resistance per length of the one conductor at its temperature.
	At units.ResistancePerLength
}

// Resistance returns the resistance per length of one conductor in direct
// current:
//
//	r = ρ20 · (1 + α20 · (T - 20 °C)) · lay / A
//
// for gauges and kcmil, with lay 1.02 for stranded and 1 for solid; and for
// metric sizes the limit of IEC 60228 at 20 °C, warmed in the same way. A
// Resistivity or a Stated resistance given by the caller is used as it is.
// Tinning, joints and skin effect are left out.
//
// A field outside the range that [Conductor] states gives a
// [*units.RangeError] that matches [units.ErrRange], and the zero PerLength.
func Resistance(c Conductor) (PerLength, error) { return resistance("wire.Resistance", c) }

func resistance(op string, c Conductor) (PerLength, error) {
	if err := c.check(op); err != nil {
		return PerLength{}, err
	}
	p := PerLength{Conductor: c}
	stated, hasStated := c.Stated.Get()
	given, hasGiven := c.Resistivity.Get()
	switch {
	case hasStated:
		p.Basis, p.At = FromStated, stated
	case hasGiven:
		p.Basis, p.Area, p.Rho = FromResistivity, c.Size.Area(), given
		p.At = p.Rho.Over(p.Area)
	case c.Size.IsMetric():
		p.Conductor.Temperature = c.Temperature.Or(WarmCopper())
		p.Basis, p.Area = FromIEC60228, c.Size.Area()
		p.At20 = iecResistance(c.Size, c.Strand)
		p.At = units.Scale(p.At20, warming(p.Conductor.Temperature))
	default:
		p.Conductor.Temperature = c.Temperature.Or(WarmCopper())
		p.Basis, p.Area = FromCopper, c.Size.Area()
		p.Rho = units.Scale(copperRho20, warming(p.Conductor.Temperature)*c.Strand.lay())
		p.At = p.Rho.Over(p.Area)
	}
	if err := units.Above[units.ResistancePerLength](0).Check(op, "PerLength", p.At); err != nil {
		return PerLength{}, err
	}
	return p, nil
}

// lay returns the allowance for strands that go round the axis.
func (s Strand) lay() units.Ratio {
	if s == Solid {
		return 1
	}
	return strandLay
}

// check reports the first field out of range.
func (c Conductor) check(op string) error {
	if stated, ok := c.Stated.Get(); ok {
		return units.Above[units.ResistancePerLength](0).Check(op, "Stated", stated)
	}
	if err := c.Size.check(op, "Size"); err != nil {
		return err
	}
	if rho, ok := c.Resistivity.Get(); ok {
		return units.Above[units.Resistivity](0).Check(op, "Resistivity", rho)
	}
	if c.Strand > Flexible || c.Strand == Flexible && !c.Size.IsMetric() {
		return &units.RangeError{Op: op, Field: "Strand", Value: c.Strand, Allowed: strandRange{}}
	}
	if c.Temperature.IsSet() {
		return metalTemperatures.Check(op, "Temperature", c.Temperature)
	}
	return nil
}

// strandRange says in words what a Strand may be.
type strandRange struct{}

// String names the strands.
func (strandRange) String() string {
	return "stranded or solid; flexible for a metric size only, else give Stated"
}
